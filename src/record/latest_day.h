#pragma once

#include <optional>

#include "record/record.h"

namespace winchbook::record {

/// The day of the last entry of the record's visits, by their own dates: arrival, agreements,
/// findings, acts, tests, photographs, hand-back. Nothing when no visit bears a day.
[[nodiscard]] std::optional<base::Day> latest_day(const Record& record);

}  // namespace winchbook::record
