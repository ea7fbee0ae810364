#pragma once

#include <vector>

#include "document/document.h"
#include "report/telling.h"

namespace winchbook::report {

/// What to beware of under the screwdriver: the bench's own flags in its own words, then what only
/// materials and dates say, in a few.
[[nodiscard]] std::vector<document::Caution> hazards_open(const Telling& telling);
/// The same for a card: on the water the bench's flags by their names alone, on the shelf in full.
[[nodiscard]] std::vector<document::Caution> hazards_on_card(const Telling& telling,
                                                             bool on_the_water);

}  // namespace winchbook::report
