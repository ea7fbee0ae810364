#pragma once

#include <string>

#include "app/edit.h"

namespace winchbook::app {

/// Pairs two photographs taken from the same place: as the reel came, and as it left. Errors: they
/// are not of these stages, or one has another fellow.
[[nodiscard]] Change photo_pair(std::string found, std::string left);

}  // namespace winchbook::app
