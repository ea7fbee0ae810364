#pragma once

#include <vector>

#include "document/document.h"
#include "layout/frame.h"

namespace winchbook::layout {

/// Lines to write on, over the whole frame: one frame for each label, in order, so that a page may
/// end between two of them. The label stands in side, on its first line; the rules run in main.
[[nodiscard]] std::vector<Frame> set_ruled_lines(const document::RuledLines& lines, TagId parent,
                                                 const Setting& setting);

}  // namespace winchbook::layout
