#pragma once

#include <filesystem>
#include <memory>
#include <string_view>

#include "library/world.h"

namespace winchbook::library {

/// The lock that every writer of a reel's folder takes; `command` is told to whoever waits.
[[nodiscard]] base::Result<std::unique_ptr<base::HeldLock>> lock_reel(
    const World& world, const std::filesystem::path& folder, std::string_view command);

}  // namespace winchbook::library
