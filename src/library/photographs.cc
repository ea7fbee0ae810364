#include "library/photographs.h"

#include <fmt/format.h>

#include <algorithm>

namespace winchbook::library {
namespace {

namespace fs = std::filesystem;

bool is_inside(const fs::path& file, const fs::path& folder) {
  const auto [rest, unused] = std::mismatch(folder.begin(), folder.end(), file.begin(), file.end());
  return rest == folder.end();
}

}  // namespace

// What a path's text alone shows is a rule of the record.
std::optional<base::Diagnostic> fault_of_place(const base::Files& files, const fs::path& folder,
                                               const std::string& file) {
  const fs::path path = folder / file;
  if (!files.exists(path)) {
    return base::error(fmt::format("photograph \"{}\" is missing", file),
                       "put the file back, or take the photograph out of the record",
                       "photo-missing");
  }
  if (!is_inside(files.resolved(path), files.resolved(folder))) {
    return base::error(
        fmt::format("photograph \"{}\" leaves the reel's folder through a link", file),
        "copy the file into photos/ in place of the link", "photo-path");
  }
  return std::nullopt;
}

}  // namespace winchbook::library
