#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "library/library.h"
#include "recordfile/editions_file.h"
#include "recordfile/record_file.h"
#include "report/telling.h"

namespace winchbook::app {

using recordfile::IssuedEdition;

/// What editions.xml in a reel's folder lists, oldest first; nothing when there is no such file.
[[nodiscard]] base::Result<std::vector<IssuedEdition>> read_editions(
    library::Library& library, const std::filesystem::path& folder);

/// Where an edition is kept, from the reel's folder: "issued/keepsake-2.pdf".
[[nodiscard]] std::string kept_name(const report::Edition& edition);

/// The edition of a document that would be issued on `date`; `withheld` are the digests in the
/// record it carries.
[[nodiscard]] base::Result<report::Edition> next_edition(library::Library& library,
                                                         const std::string& document,
                                                         const base::Day& date,
                                                         const recordfile::LoadedRecord& loaded,
                                                         const std::vector<std::string>& withheld);

/// Keeps `pdf` in the folder's issued/ and appends the edition to editions.xml.
/// Errors leave both as they were.
[[nodiscard]] base::Diagnostics keep_edition(library::Library& library,
                                             const std::filesystem::path& folder,
                                             const IssuedEdition& edition, std::string_view pdf);

}  // namespace winchbook::app
