#pragma once

#include "document/chart.h"
#include "layout/frame.h"

namespace winchbook::layout::charts {

/// Two bars a question: ink to the low figure, hatched to the high one, open to 100.
[[nodiscard]] Frame set_originality(const document::OriginalityChart& chart, Length width,
                                    TagId figure, const Setting& setting);
/// One line an axis with its own words under it; rings above, discs below, the facts beside them.
[[nodiscard]] Frame set_condition(const document::ConditionChart& chart, Length width, TagId figure,
                                  const Setting& setting);
/// Bars with their figures; the chosen one is filled.
[[nodiscard]] Frame set_bars(const document::BarChart& chart, Length width, TagId figure,
                             const Setting& setting);
/// A bar a mark on an axis of years, the window shaded, the profile and its ranges below.
[[nodiscard]] Frame set_dating(const document::DatingChart& chart, Length width, TagId figure,
                               const Setting& setting);
/// One curve over an axis with a word at each end.
[[nodiscard]] Frame set_curve(const document::CurveChart& chart, Length width, TagId figure,
                              const Setting& setting);

}  // namespace winchbook::layout::charts
