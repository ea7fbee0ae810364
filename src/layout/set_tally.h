#pragma once

#include "layout/slice.h"

namespace winchbook::layout {

/// Figures side by side, at most four in a row: a rule, the name, ring and disc with what each was,
/// and what it counts. A list of the structure tree, an item a figure.
void add_tally(const document::Tally& tally, TagId parent, const Setting& setting, Slices& slices);

}  // namespace winchbook::layout
