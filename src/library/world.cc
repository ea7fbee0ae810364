#include "library/world.h"

#include <cstdint>
#include <utility>

namespace winchbook::library {

base::Result<xml::Document> read_xml(const World& world, const std::filesystem::path& path) {
  constexpr std::uintmax_t kMostBytes = std::uintmax_t{64} << 20U;
  auto bytes = world.files.read(path, kMostBytes);
  if (!bytes) return bytes.faults();
  return xml::Document::parse(path.string(), std::move(bytes).value());
}

}  // namespace winchbook::library
