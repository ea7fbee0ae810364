#pragma once

#include <string>

#include "daybook/edit.h"

namespace winchbook::daybook {

/// Pairs two photographs taken from the same place: as the reel came, and as it left. Errors: they
/// are not of these stages, or one has another fellow.
[[nodiscard]] Change photo_pair(std::string found, std::string left);

}  // namespace winchbook::daybook
