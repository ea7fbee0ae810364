#pragma once

#include <cstddef>
#include <filesystem>

#include "base/diagnostic.h"
#include "forms/job.h"
#include "library/library.h"

namespace winchbook::answers {

/// What a check found.
struct CheckReport {
  std::filesystem::path record;  ///< the record.xml that was read
  base::Diagnostics found;       ///< errors and warnings in the order of the file
  std::size_t photographs = 0;   ///< how many were decoded and are as the record says
};

/// Checks a record (a reel's folder or its record.xml) with everything it points at: the schema
/// section by section, the rules, then every photograph, decoded to its last row. Nothing is
/// written, and no clock is asked.
[[nodiscard]] CheckReport check(library::Library& library, const std::filesystem::path& path);

[[nodiscard]] forms::Job check_job();

}  // namespace winchbook::answers
