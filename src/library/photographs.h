#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "base/diagnostic.h"
#include "base/files.h"

namespace winchbook::library {

/// A photograph that is not there, or that a link leads out of the reel's folder; without a place.
[[nodiscard]] std::optional<base::Diagnostic> fault_of_place(const base::Files& files,
                                                             const std::filesystem::path& folder,
                                                             const std::string& file);

}  // namespace winchbook::library
