#include "knowledge/source.h"

#include <cstdint>
#include <utility>

namespace winchbook::knowledge {

base::Result<const xml::Schema*> Source::schema(std::string_view name) const {
  const auto there = schemas_.find(name);
  if (there != schemas_.end()) return &there->second;
  constexpr std::uintmax_t kMostBytes = std::uintmax_t{16} << 20U;
  const std::filesystem::path path = data_ / "schemas" / name;
  const auto bytes = files_->read(path, kMostBytes);
  if (!bytes) return bytes.faults();
  auto compiled = xml::Schema::compile(path.string(), *bytes);
  if (!compiled) return compiled.faults();
  return &schemas_.emplace(name, std::move(compiled).value()).first->second;
}

}  // namespace winchbook::knowledge
