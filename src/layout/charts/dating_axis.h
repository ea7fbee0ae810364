#pragma once

#include <optional>

#include "document/chart.h"
#include "layout/charts/drawing.h"

namespace winchbook::layout::charts {

/// A mark's bar without a known end stops this far before the plot's edge, and dots run on.
inline constexpr Length kOpenEnd = base::points(18);

/// Years on paper: whole decades that cover every end of the chart, with room for the dots of the
/// ends that are not known.
struct YearAxis {
  int first = 0;
  int last = 0;
  Scale scale;
};

/// Nothing when not one year is known.
[[nodiscard]] std::optional<YearAxis> year_axis_of(const document::DatingChart& chart, Length left,
                                                   Length right);

/// Axis line, ticks and years; returns the height below `top`.
Length draw_year_axis(const YearAxis& axis, Length top, Drawing& drawing);

}  // namespace winchbook::layout::charts
