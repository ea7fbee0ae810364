#pragma once

#include <optional>

#include "document/document.h"
#include "report/telling.h"
#include "report/told.h"

namespace winchbook::report {

/// The parts and their surfaces, of 100, as found and as left; nothing when no figure is given.
[[nodiscard]] std::optional<document::ChartFigure> originality_chart(
    const Telling& telling, const assess::originality::Finding& finding);

/// The figures that the chart tells.
[[nodiscard]] FactList told_chart(const assess::originality::Finding& finding);

}  // namespace winchbook::report
