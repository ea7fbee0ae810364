#pragma once

#include <optional>

#include "report/telling.h"

namespace winchbook::report {

/// The four axes of condition, as found and as left; nothing when the visit was not graded.
[[nodiscard]] std::optional<document::ChartFigure> condition_chart(const Telling& telling);

}  // namespace winchbook::report
