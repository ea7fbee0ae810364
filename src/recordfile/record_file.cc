#include "recordfile/record_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstdint>
#include <iterator>
#include <memory>
#include <utility>

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

/// Every section against the schema; those that keep it are read at once, so that a fault in one
/// does not hide the dates of the next.
Diagnostics read_sections(const xml::Document& document, const xml::Schema& schema,
                          record::Record& record) {
  Diagnostics faults;
  std::vector<std::pair<const Section*, pugi::xml_node>> sound;
  for (const Section& section : sections()) {
    const pugi::xml_node node = document.root().child(section.name);
    if (!node || !is_ours(node)) continue;
    Diagnostics found = schema.faults_in(document, node);
    if (found.empty()) sound.emplace_back(&section, node);
    append(faults, std::move(found));
  }
  append(faults, faults_of_references(document));
  take_out_foreign(document.root());
  for (const auto& [section, node] : sound)
    section->read(Element(document, faults, node), record);
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
                                const std::filesystem::path& schemas) {
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
  const auto schema = load_schema(files, schemas);
  if (!schema) return schema.faults();
  auto loaded = read_bytes(file.string(), std::move(bytes).value(), *schema);
  if (loaded) loaded.value().folder = file.parent_path().empty() ? "." : file.parent_path();
  return loaded;
}

}  // namespace winchbook::recordfile
