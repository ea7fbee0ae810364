#pragma once

#include "report/telling.h"

namespace winchbook::report {

/// The four courses weighed: the bars, the answer, what comes next, what would turn it over and
/// what stands in the way. Adds nothing when they were not weighed.
void add_weighed_courses(const Telling& telling, document::Chapter& chapter);

}  // namespace winchbook::report
