#pragma once

#include "assess/assessment.h"
#include "base/result.h"
#include "library/library.h"
#include "record/record.h"

namespace winchbook::answers {

/// Asks every question of a record, by what is known of its kind of reel. The answers point into
/// the library's knowledge.
[[nodiscard]] base::Result<assess::Assessment> assessed(library::Library& library,
                                                        const record::Record& record);

}  // namespace winchbook::answers
