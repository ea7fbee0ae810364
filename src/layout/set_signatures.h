#pragma once

#include "document/document.h"
#include "layout/frame.h"

namespace winchbook::layout {

/// What is signed, over the whole frame, and under it the lines to sign on, side by side: for each
/// person a line two columns long and one of a column for the day, with 30 points above them for
/// the pen, and 7.5 of air over all. It is never parted.
[[nodiscard]] Frame set_signatures(const document::Signatures& signatures, TagId parent,
                                   const Setting& setting);

}  // namespace winchbook::layout
