#include "recordfile/record_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <iterator>
#include <memory>
#include <string_view>
#include <utility>

#include "record/free_id.h"
#include "recordfile/fields.h"
#include "recordfile/reader.h"
#include "recordfile/rules.h"
#include "recordfile/sections.h"

namespace winchbook::recordfile {
namespace {

using base::Diagnostics;

void append(Diagnostics& to, Diagnostics more) {
  std::move(more.begin(), more.end(), std::back_inserter(to));
}

void sort_by_place(Diagnostics& faults) {
  std::stable_sort(faults.begin(), faults.end(), [](const auto& a, const auto& b) {
    return std::pair(a.where.line, a.where.column) < std::pair(b.where.line, b.where.column);
  });
}

/// A bench's own notes are kept in the file and never read.
void take_out_foreign(pugi::xml_node element) {
  for (pugi::xml_node child = element.first_child(); child;) {
    const pugi::xml_node next = child.next_sibling();
    if (child.type() == pugi::node_element) {
      if (is_ours(child)) {
        take_out_foreign(child);
      } else {
        element.remove_child(child);
      }
    }
    child = next;
  }
}

/// Reads the sections that keep the schema, so that a fault in one does not hide the dates of the
/// next.
class SoundSections {
 public:
  static constexpr bool kReads = true;

  SoundSections(Element root, std::vector<std::string_view> sound)
      : reader_(root), sound_(std::move(sound)) {}

  template <class Value> void need(std::string_view name, Value& value) const { may(name, value); }
  template <class Value> void may(std::string_view name, Value& value) const {
    if (is_sound(name)) reader_.may(name.data(), value);
  }
  template <class List> void need_group(std::string_view name, const List& list) const {
    may_group(name, list);
  }
  template <class List> void may_group(std::string_view name, const List& list) const {
    if (is_sound(name)) reader_.may_group(name.data(), list);
  }

 private:
  [[nodiscard]] bool is_sound(std::string_view name) const {
    return std::find(sound_.begin(), sound_.end(), name) != sound_.end();
  }

  Reader reader_;
  std::vector<std::string_view> sound_;
};

/// Every section against the schema, then what they say.
Diagnostics read_sections(const xml::Document& document, const xml::Schema& schema,
                          record::Record& record) {
  Diagnostics faults;
  std::vector<std::string_view> sound;
  for (const Section& section : sections()) {
    const pugi::xml_node node = document.root().child(section.name);
    if (!node || !is_ours(node)) continue;
    Diagnostics found = schema.faults_in(document, node);
    if (found.empty()) sound.emplace_back(section.name);
    append(faults, std::move(found));
  }
  append(faults, faults_of_references(document));
  take_out_foreign(document.root());
  const SoundSections reader(Element(document, faults, document.root()), std::move(sound));
  fields(reader, record);
  return faults;
}

}  // namespace

base::Location LoadedRecord::where(std::string_view id) const {
  const base::Location* found = places.find(id);
  return found == nullptr ? base::Location{file, 0, 0} : *found;
}

base::Location LoadedRecord::where(std::string_view id, std::string_view element,
                                   std::size_t number) const {
  return where(fmt::format("{}/{}/{}", id, element, number));
}

base::Result<std::string> LoadedRecord::id_for(const record::Record& now, const std::string& given,
                                               std::string_view wish) const {
  if (given.empty()) return record::free_id(now, wish);
  if (!record::has_id(now, given)) return given;
  return base::of_command(base::error_at(
      where(given), fmt::format("something is called \"{}\" in the record already", given),
      "give another --id, or leave it out", "command-id"));
}

std::filesystem::path record_path(const base::Files& files, const std::filesystem::path& path) {
  return files.is_folder(path) ? path / "record.xml" : path;
}

base::Result<xml::Schema> load_schema(const base::Files& files,
                                      const std::filesystem::path& schemas) {
  const std::filesystem::path path = schemas / "record-1.xsd";
  const auto bytes = files.read(path, xml::Limits{}.bytes);
  if (!bytes) return bytes.faults();
  return xml::Schema::compile(path.string(), *bytes);
}

base::Result<LoadedRecord> read_bytes(std::string file, std::string bytes,
                                      const xml::Schema& schema) {
  auto parsed = xml::Document::parse(std::move(file), std::move(bytes));
  if (!parsed) return parsed.faults();
  const auto kept = std::make_shared<const xml::Document>(std::move(parsed).value());
  const xml::Document& document = *kept;
  Diagnostics faults = faults_of_root(document);
  if (!faults.empty()) return faults;

  LoadedRecord loaded;
  loaded.file = document.source().file();
  loaded.record.language = document.root().attribute("lang").value();
  loaded.places = Places(kept);
  faults = faults_of_order(document);
  append(faults, read_sections(document, schema, loaded.record));
  if (faults.empty()) {
    // From here on the record is valid in itself; what is left is whether it makes sense.
    for (base::Diagnostic& found : apply_rules(loaded)) {
      Diagnostics& list = found.severity == base::Severity::error ? faults : loaded.warnings;
      list.push_back(std::move(found));
    }
  }
  sort_by_place(loaded.warnings);
  sort_by_place(faults);
  if (!faults.empty()) {
    append(faults, std::move(loaded.warnings));
    return faults;
  }
  loaded.bytes = document.source().bytes();
  return loaded;
}

base::Result<LoadedRecord> read(const base::Files& files, const std::filesystem::path& path,
                                const xml::Schema& schema) {
  const std::filesystem::path file = record_path(files, path);
  constexpr std::uintmax_t kMostBytes = xml::Limits{}.bytes;
  if (const auto size = files.size(file); size && *size > kMostBytes && !files.is_folder(file)) {
    return base::error_at({file.string(), 0, 0},
                          fmt::format("the record is {} MB long, expected at most {} MB",
                                      *size >> 20U, kMostBytes >> 20U),
                          "a record holds words; keep pictures and other data in files beside it",
                          "size");
  }
  auto bytes = files.read(file, kMostBytes);
  if (!bytes) return bytes.faults();
  auto loaded = read_bytes(file.string(), std::move(bytes).value(), schema);
  if (loaded) loaded.value().folder = file.parent_path().empty() ? "." : file.parent_path();
  return loaded;
}

base::Result<LoadedRecord> read(const base::Files& files, const std::filesystem::path& path,
                                const std::filesystem::path& schemas) {
  const auto schema = load_schema(files, schemas);
  if (!schema) return schema.faults();
  return read(files, path, *schema);
}

}  // namespace winchbook::recordfile
