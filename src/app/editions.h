#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "library/library.h"
#include "report/telling.h"

namespace winchbook::app {

/// One document as it was issued for good: a row of editions.xml.
struct IssuedEdition {
  std::string document;
  int number = 1;
  std::string issued_on;
  std::string reader;
  std::string file;
  std::string fingerprint;
  std::string code;
  std::string program;
};

/// What editions.xml in a reel's folder lists, oldest first; nothing when there is no such file.
[[nodiscard]] base::Result<std::vector<IssuedEdition>> read_editions(
    library::Library& library, const std::filesystem::path& folder);

/// Keeps `pdf` in the folder's issued/ and appends the edition to editions.xml.
/// Errors leave both as they were.
[[nodiscard]] base::Diagnostics keep_edition(library::Library& library,
                                             const std::filesystem::path& folder,
                                             const IssuedEdition& edition, std::string_view pdf);

}  // namespace winchbook::app
