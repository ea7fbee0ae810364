#include "library/library.h"

#include <utility>

namespace winchbook::library {

base::Result<const xml::Schema*> Library::schema(std::string_view name) {
  if (const auto there = schemas_.find(name); there != schemas_.end()) return &there->second;
  auto compiled = read_schema(world_, name);
  if (!compiled) return compiled.faults();
  return &schemas_.emplace(name, std::move(compiled).value()).first->second;
}

base::Result<const recordfile::ElementOrder*> Library::order() {
  if (!order_) {
    const auto document = read_xml(world_, world_.data / "schemas" / "record-1.xsd");
    if (!document) return document.faults();
    order_.emplace(*document);
  }
  return &*order_;
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
  if (const auto there = knowledge_.find(kind); there != knowledge_.end()) return &there->second;
  auto loaded = knowledge::load(world_.files, world_.data, kind);
  if (!loaded) return loaded.faults();
  return &knowledge_.emplace(kind, std::move(loaded).value()).first->second;
}

base::Result<const knowledge::CareTable*> Library::care() {
  if (!care_) {
    auto loaded = knowledge::load_care(world_.files, world_.data);
    if (!loaded) return loaded.faults();
    care_ = std::move(loaded).value();
  }
  return &*care_;
}

base::Result<words::Catalogue> Library::words(std::string_view language) {
  const auto templates = schema("template-1.xsd");
  if (!templates) return templates.faults();
  return read_words(world_, language, **templates);
}

}  // namespace winchbook::library
