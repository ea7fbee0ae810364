#pragma once

#include <hpdf.h>
#include <hpdf_doc.h>
#include <hpdf_objects.h>
#include <hpdf_pages.h>

#include <deque>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

#include "base/length.h"
#include "base/result.h"

struct libdeflate_compressor;

/// The only door to libharu. Its documented calls know neither tags nor attachments, so this works
/// with its object layer, whose headers are installed but promise nothing: any other version has to
/// be looked at before it is let in. Its objects for single entries are slow and round 841.89 to
/// 841.89001, so dictionaries are written as text through its write function; it numbers, builds
/// the page tree and the cross-references.
static_assert(HPDF_VERSION_ID >= 20300 && HPDF_VERSION_ID < 20500,
              "the object layer of this libharu has not been tried");

namespace winchbook::pdf {

/// A numbered object of the file: a dictionary whose entries are written in `entries` ("/Type/Font
/// /Encoding/Identity-H"), and, for a stream, its data.
class Object {
 public:
  Object(HPDF_Dict dict, std::string_view data);
  Object(const Object&) = delete;
  Object& operator=(const Object&) = delete;
  ~Object() = default;

  std::string entries;

  /// "12 0 R".
  [[nodiscard]] std::string reference() const;
  /// libharu's own handle, to be put into its catalogue, pages and trailer.
  [[nodiscard]] HPDF_Dict dict() const { return dict_; }
  /// The stream's data as they stand in the file.
  [[nodiscard]] std::string_view data() const { return data_; }

 private:
  friend class Haru;
  HPDF_Dict dict_;
  std::string packed_;     ///< data that were compressed here
  std::string_view data_;  ///< points into packed_ or to bytes that outlive the file
  std::size_t read_ = 0;   ///< how far libharu has read them
};

/// A page made by libharu, with its resources, content and annotations still to come.
class PageObject {
 public:
  explicit PageObject(HPDF_Page page) : page_(page) {}
  [[nodiscard]] std::string reference() const;
  [[nodiscard]] HPDF_Page page() const { return page_; }

 private:
  HPDF_Page page_;
};

/// One file in the making.
class Haru {
 public:
  Haru();
  Haru(const Haru&) = delete;
  Haru& operator=(const Haru&) = delete;
  ~Haru();

  /// A dictionary.
  [[nodiscard]] Object& add_object();
  /// A stream, its data deflated; adds the /Filter.
  [[nodiscard]] Object& add_deflated(std::string_view data);
  /// A stream whose data stand as they are and must outlive this.
  [[nodiscard]] Object& add_stream(std::string_view data);
  [[nodiscard]] PageObject add_page(base::Length width, base::Length height);
  /// Deflates `data` into the content stream that libharu made with the page.
  void set_content(const PageObject& page, std::string_view data);

  /// Entries of the objects that libharu writes itself.
  void put(HPDF_Dict dict, const char* key, const Object& object);
  void put_name(HPDF_Dict dict, const char* key, const char* name);
  void put_number(HPDF_Dict dict, const char* key, int value);
  void put_text(HPDF_Dict dict, const char* key, std::string_view utf8);
  /// A string of plain ASCII.
  void put_plain(HPDF_Dict dict, const char* key, const std::string& ascii);
  void put_references(HPDF_Dict dict, const char* key, const std::vector<const Object*>& objects);
  [[nodiscard]] HPDF_Dict catalogue() const { return document_->catalog; }
  [[nodiscard]] HPDF_Dict info() const { return document_->info; }

  /// The whole file. Its trailer's ID is a digest of what the objects hold. Error when libharu
  /// refused something on the way.
  [[nodiscard]] base::Result<std::string> bytes();

 private:
  struct Fault {
    HPDF_STATUS code = 0;
    HPDF_STATUS detail = 0;
  };
  static void record_fault(HPDF_STATUS code, HPDF_STATUS detail, void* fault);
  void note(HPDF_STATUS status);
  Object& keep_stream(HPDF_Dict dict, std::string_view data);
  void deflate(Object& object, std::string_view data);
  void put_identifier();

  Fault fault_;
  HPDF_Doc document_;
  std::deque<Object> objects_;
  std::unique_ptr<libdeflate_compressor, void (*)(libdeflate_compressor*)> compressor_;
};

}  // namespace winchbook::pdf
