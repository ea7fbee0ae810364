#pragma once

#include <vector>

#include "layout/slice.h"

namespace winchbook::layout {

/// What stands in the margin, in order, each with its note, figure or chart tag under `parent`.
[[nodiscard]] std::vector<SideItem> set_beside(const std::vector<document::Beside>& beside,
                                               TagId parent, const Setting& setting);

/// One caution over a width: bar, label, words.
[[nodiscard]] Frame set_caution(const document::Caution& caution, Length width, TagId parent,
                                const Setting& setting);

/// How much lower the margin's words stand, so that their baselines meet the reading text's.
[[nodiscard]] Length margin_drop(const Setting& setting);

}  // namespace winchbook::layout
