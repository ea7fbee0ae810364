#pragma once

#include <optional>

#include "document/document.h"
#include "report/telling.h"

namespace winchbook::report {

/// A bar for each mark, material or statement that names years, the window, those left out with
/// the reason, and the years by likelihood. Nothing when nothing names a year. Over 48 bars only
/// those that set the window, and those that do not fit, are drawn first.
[[nodiscard]] std::optional<document::ChartFigure> dating_chart(const Telling& telling);

/// How many of the marks that name years the chart leaves out for want of room.
[[nodiscard]] std::size_t marks_not_drawn(const Telling& telling);

}  // namespace winchbook::report
