#pragma once

#include <vector>

#include "document/document.h"
#include "layout/frame.h"

namespace winchbook::layout {

/// Labels two across, one frame a row, each as wide as the page's frame; rows abut, so that one cut
/// parts two of them. A corner of a label is marked where the cuts cross. A row is as high as its
/// fuller label, and no lower than was asked for: nothing is cut short. A square code has modules
/// of 3 points and four of them white around it.
[[nodiscard]] std::vector<Frame> set_labels(const document::Labels& labels, TagId parent,
                                            const Setting& setting);

}  // namespace winchbook::layout
