#pragma once

#include "forms/job.h"

namespace winchbook::catalogue {

/// Judges the stock's washers for a seat; with a line chosen, enters into the record that they are
/// fitted.
[[nodiscard]] forms::Job seat_job();

}  // namespace winchbook::catalogue
