#pragma once

#include "document/document.h"
#include "layout/slice.h"

namespace winchbook::layout {

/// A step of work over main under a thin rule: number, words, boxes to tick in a column at the
/// right, facts below. It is never split; what stands beside it is level with its first line.
/// `list` is the list that a run of steps shares.
void add_step(const document::Step& step, TagId list, const Setting& setting, Slices& slices);

/// The rule over a step and under the last of a run, furniture: over main, at height 0.
[[nodiscard]] PathItem step_rule(const Setting& setting);

}  // namespace winchbook::layout
