#pragma once

#include "document/document.h"
#include "layout/frame.h"

namespace winchbook::layout {

/// One lettered entry of the second ledger over the whole frame, with the dashed rule above it but
/// none below: the caller closes a run of entries with one more (`dashed_rule`). At least 93.75
/// high; it grows with its text and is never split. Adds heading, figures and facts under `parent`.
[[nodiscard]] Frame set_entry(const document::Entry& entry, TagId parent, const Setting& setting);

/// The bench's own rule, 0.75 dashed 3-2, furniture: from `left` to the right at height 0.
[[nodiscard]] PathItem dashed_rule(Point left, Length width, const Setting& setting);

}  // namespace winchbook::layout
