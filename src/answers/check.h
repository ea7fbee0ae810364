#pragma once

#include <cstddef>
#include <filesystem>

#include "base/diagnostic.h"
#include "base/files.h"
#include "record/record.h"

namespace winchbook::answers {

/// What a check found.
struct CheckReport {
  std::filesystem::path record;  ///< the record.xml that was read
  base::Diagnostics found;       ///< errors and warnings in the order of the file
  std::size_t photographs = 0;   ///< how many were decoded and are as the record says
};

/// Checks a record (a reel's folder or its record.xml) with everything it points at: the schema
/// section by section, the rules, then every photograph, decoded to its last row. Nothing is
/// written. `schemas` is the folder with record-1.xsd.
[[nodiscard]] CheckReport check(const base::Files& files, const std::filesystem::path& path,
                                const std::filesystem::path& schemas);

/// Checks one photograph against the record. Errors and warnings without a place.
[[nodiscard]] base::Diagnostics check_photograph(const base::Files& files,
                                                 const std::filesystem::path& folder,
                                                 const record::Photo& photo);

}  // namespace winchbook::answers
