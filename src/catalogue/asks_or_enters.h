#pragma once

#include "forms/job.h"

namespace winchbook::catalogue {

/// A name that answers while nothing is entered: the fields of both, each name once; the entry runs
/// when a field was given that only the entry has.
[[nodiscard]] forms::Job asks_or_enters(forms::Job answer, forms::Job entry);

}  // namespace winchbook::catalogue
