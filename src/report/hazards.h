#pragma once

#include <vector>

#include "document/document.h"
#include "report/telling.h"

namespace winchbook::report {

/// Where a hazard matters: under the screwdriver, on the water, on the shelf.
enum class Hazards { open, use, keep };

/// What to beware of there, as cautions of a few words: the bench's own flags and cautions, and
/// what materials and dates add to them.
[[nodiscard]] std::vector<document::Caution> hazards(const Telling& telling, Hazards where);

}  // namespace winchbook::report
