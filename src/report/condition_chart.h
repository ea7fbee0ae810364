#pragma once

#include <optional>

#include "report/telling.h"

namespace winchbook::report {

/// Whether anything was entered that says where the reel stands on an axis, in the order of the
/// axes.
[[nodiscard]] bool is_examined(const assess::condition::Finding& finding, std::size_t axis);

/// The four axes of condition, as found and as left; nothing when the visit was not graded.
[[nodiscard]] std::optional<document::ChartFigure> condition_chart(const Telling& telling);

}  // namespace winchbook::report
