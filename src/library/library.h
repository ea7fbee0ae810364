#pragma once

#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "base/edtf_date.h"
#include "knowledge/courses.h"
#include "knowledge/drag.h"
#include "knowledge/knowledge.h"
#include "knowledge/prices.h"
#include "knowledge/source.h"
#include "library/world.h"
#include "recordfile/element_order.h"
#include "recordfile/record_file.h"
#include "text/font_book.h"
#include "words/catalogue.h"
#include "xml/document.h"
#include "xml/schema.h"

namespace winchbook::library {

/// What the program itself brings (schemas, knowledge, words), each read when it is first asked for
/// and once only; and the world that it is read from. Passed to every job.
class Library {
 public:
  using Paths = std::vector<std::filesystem::path>;

  explicit Library(World world) : world_(std::move(world)), source_(world_.files, world_.data) {}

  [[nodiscard]] const World& world() const { return world_; }
  [[nodiscard]] base::Files& files() const { return world_.files; }
  /// Asks the clock; only where a field was left out that means today.
  [[nodiscard]] base::Day today() const { return world_.today(); }

  /// A schema of schemas/, compiled: "record-1.xsd".
  [[nodiscard]] base::Result<const xml::Schema*> schema(std::string_view name) const {
    return source_.schema(name);
  }
  /// Where the files of what is known are read from.
  [[nodiscard]] const knowledge::Source& source() const { return source_; }
  /// In which order a record's elements stand.
  [[nodiscard]] base::Result<const recordfile::ElementOrder*> order();
  /// Reads a record: a reel's folder or its record.xml.
  [[nodiscard]] base::Result<recordfile::LoadedRecord> record(const std::filesystem::path& path);
  /// The same from bytes already in memory; `file` is what messages call it.
  [[nodiscard]] base::Result<recordfile::LoadedRecord> record_of(std::string file,
                                                                 std::string bytes);
  /// What is known of all kinds of reel.
  [[nodiscard]] base::Result<const knowledge::Knowledge*> knowledge(std::string_view kind);
  /// What harms which material.
  [[nodiscard]] base::Result<const knowledge::CareTable*> care();
  /// Friction, fits and settings.
  [[nodiscard]] base::Result<const knowledge::DragKnowledge*> drag();
  /// What each course does and makes of a reel.
  [[nodiscard]] base::Result<const knowledge::Courses*> courses();
  /// What is known of marks, materials and numbers.
  [[nodiscard]] base::Result<const knowledge::Marks*> marks();
  /// The makers, with those of further files of the bench.
  [[nodiscard]] base::Result<std::vector<knowledge::Maker>> makers(const Paths& more) const;
  /// Price indices, rates and rules, with further files of the bench.
  [[nodiscard]] base::Result<knowledge::Prices> prices(const Paths& more) const;
  /// The faces that may be named, and the file that lists them.
  [[nodiscard]] base::Result<const std::vector<text::FaceEntry>*> faces();
  [[nodiscard]] std::filesystem::path faces_file() const {
    return world_.data / "shared" / "fonts.txt";
  }
  /// The words of a language, with those of the language it falls back to. A language that has no
  /// file of its own speaks that of its first half ("en-IE": "en-GB"), or else British English.
  [[nodiscard]] base::Result<words::Catalogue> words(std::string_view language);

 private:
  World world_;
  knowledge::Source source_;
  std::optional<recordfile::ElementOrder> order_;
  std::map<std::string, knowledge::Knowledge, std::less<>> knowledge_;
  std::optional<knowledge::CareTable> care_;
  std::optional<knowledge::DragKnowledge> drag_;
  std::optional<knowledge::Courses> courses_;
  std::optional<knowledge::Marks> marks_;
  std::optional<std::vector<text::FaceEntry>> faces_;
};

}  // namespace winchbook::library
