#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "base/files.h"
#include "base/result.h"

/// The earlier versions of a record, kept in .history/ of the reel's folder: for the change with
/// the number 12, `0012.xml` is the record as it was before, byte for byte, and `0012.txt` the
/// command that changed it and the SHA-256 of what it wrote. Nothing in it is ever taken away: an
/// edit has no inverse once somebody has typed in between, so a change is undone by going back.
namespace winchbook::daybook {

/// A change that was made.
struct Version {
  int number = 0;
  std::string command;  ///< "winchbook clean reels/curlew --all", as it was typed
  std::string sha256;   ///< of the record after it
};

/// The changes, oldest first; nothing when none was made.
[[nodiscard]] std::vector<Version> versions(const base::Files& files,
                                            const std::filesystem::path& folder);

/// The record as it was before the change with this number.
[[nodiscard]] base::Result<std::string> version_before(const base::Files& files,
                                                       const std::filesystem::path& folder,
                                                       int number);

/// Keeps `before` and says which change comes next. A number whose change was never made, because
/// the machine stopped in between, is used again. Empty when it went well.
[[nodiscard]] base::Diagnostics keep_version(base::Files& files,
                                             const std::filesystem::path& folder,
                                             std::string_view before, std::string_view command,
                                             std::string_view after);

}  // namespace winchbook::daybook
