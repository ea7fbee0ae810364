#pragma once

#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

#include "base/edtf_date.h"
#include "knowledge/knowledge.h"
#include "library/world.h"
#include "recordfile/element_order.h"
#include "recordfile/record_file.h"
#include "words/catalogue.h"
#include "xml/schema.h"

namespace winchbook::library {

/// What the program itself brings (schemas, knowledge, words), each read when it is first asked for
/// and once only; and the world that it is read from. Passed to every job.
class Library {
 public:
  explicit Library(World world) : world_(std::move(world)) {}

  [[nodiscard]] const World& world() const { return world_; }
  [[nodiscard]] base::Files& files() const { return world_.files; }
  /// Asks the clock; only where a field was left out that means today.
  [[nodiscard]] base::Day today() const { return world_.today(); }

  /// A schema of schemas/, compiled: "record-1.xsd".
  [[nodiscard]] base::Result<const xml::Schema*> schema(std::string_view name);
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
  /// The words of a language, with those of the language it falls back to.
  [[nodiscard]] base::Result<words::Catalogue> words(std::string_view language);

 private:
  World world_;
  std::map<std::string, xml::Schema, std::less<>> schemas_;
  std::optional<recordfile::ElementOrder> order_;
  std::map<std::string, knowledge::Knowledge, std::less<>> knowledge_;
  std::optional<knowledge::CareTable> care_;
};

}  // namespace winchbook::library
