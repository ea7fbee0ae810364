#include "library/library.h"

#include <cstdint>
#include <utility>

#include "words/catalogue_file.h"

namespace winchbook::library {
namespace {

constexpr std::uintmax_t kMostBytes = std::uintmax_t{16} << 20U;
constexpr const char* kLastResort = "en-GB";

/// The file of a language: its own, or one of the same tongue, or British English.
std::filesystem::path catalogue_path(const World& world, std::string_view language) {
  const std::filesystem::path folder = world.data / "shared" / "words";
  const auto file = [&](std::string_view name) { return folder / (std::string(name) + ".xml"); };
  if (world.files.exists(file(language))) return file(language);
  const std::string tongue(language.substr(0, language.find('-')));
  for (const std::string& name : world.files.names_in(folder)) {
    if (!tongue.empty() && (name == tongue + ".xml" || name.starts_with(tongue + "-"))) {
      return folder / name;
    }
  }
  return file(kLastResort);
}

/// What was read, or is read now and kept.
template <class Value, class Load>
base::Result<const Value*> once(std::optional<Value>& kept, const Load& load) {
  if (!kept) {
    base::Result<Value> read = load();
    if (!read) return read.faults();
    kept = std::move(read).value();
  }
  return &*kept;
}

/// The same of several, by name.
template <class Value, class Load>
base::Result<const Value*> once(std::map<std::string, Value, std::less<>>& kept,
                                std::string_view name, const Load& load) {
  if (const auto there = kept.find(name); there != kept.end()) return &there->second;
  base::Result<Value> read = load();
  if (!read) return read.faults();
  return &kept.emplace(name, std::move(read).value()).first->second;
}

}  // namespace

base::Result<const recordfile::ElementOrder*> Library::order() {
  return once(order_, [&]() -> base::Result<recordfile::ElementOrder> {
    const auto document = read_xml(world_, world_.data / "schemas" / "record-1.xsd");
    if (!document) return document.faults();
    return recordfile::ElementOrder(*document);
  });
}

base::Result<recordfile::LoadedRecord> Library::record(const std::filesystem::path& path) {
  const auto compiled = schema("record-1.xsd");
  if (!compiled) return compiled.faults();
  return recordfile::read(world_.files, path, **compiled);
}

base::Result<recordfile::LoadedRecord> Library::record_of(std::string file, std::string bytes) {
  const auto compiled = schema("record-1.xsd");
  if (!compiled) return compiled.faults();
  return recordfile::read_bytes(std::move(file), std::move(bytes), **compiled);
}

base::Result<const knowledge::Knowledge*> Library::knowledge(std::string_view kind) {
  return once(knowledge_, kind, [&] { return knowledge::load(source_, kind); });
}

base::Result<const knowledge::CareTable*> Library::care() {
  return once(care_, [&] { return knowledge::load_care(source_); });
}

base::Result<const knowledge::DragKnowledge*> Library::drag() {
  return once(drag_, [&] { return knowledge::load_drag(source_); });
}

base::Result<const knowledge::Courses*> Library::courses() {
  return once(courses_, [&] { return knowledge::load_courses(source_); });
}

base::Result<const knowledge::Marks*> Library::marks() {
  return once(marks_, [&] { return knowledge::load_marks(source_); });
}

base::Result<std::vector<knowledge::Maker>> Library::makers(const Paths& more) const {
  return knowledge::load_makers(source_, more);
}

base::Result<knowledge::Prices> Library::prices(const Paths& more) const {
  return knowledge::load_prices(source_, more);
}

base::Result<const std::vector<text::FaceEntry>*> Library::faces() {
  return once(faces_, [&]() -> base::Result<std::vector<text::FaceEntry>> {
    const std::filesystem::path file = faces_file();
    const auto bytes = world_.files.read(file, kMostBytes);
    if (!bytes) return bytes.faults();
    return text::read_fonts_list(*bytes, file.string());
  });
}

base::Result<words::Catalogue> Library::words(std::string_view language) {
  const auto templates = schema("template-1.xsd");
  if (!templates) return templates.faults();
  words::Messages messages;
  words::Needs needs;
  std::string spoken;
  std::filesystem::path path = catalogue_path(world_, language);
  for (int depth = 0; depth < 4; ++depth) {
    const auto document = read_xml(world_, path);
    if (!document) return document.faults();
    auto file = words::read_catalogue(*document, **templates);
    if (!file) return file.faults();
    if (spoken.empty()) spoken = file->language;
    messages.merge(file.value().messages);  // what is there already stands
    needs.merge(file.value().needs);
    if (file->otherwise.empty()) break;
    path = catalogue_path(world_, file->otherwise);
  }
  return words::Catalogue(std::move(spoken), std::move(messages), std::move(needs));
}

}  // namespace winchbook::library
