#pragma once

#include <optional>

#include "answers/value.h"
#include "assess/advice/advice.h"
#include "assess/assessment.h"
#include "base/result.h"
#include "recordfile/record_file.h"
#include "report/worth.h"

namespace winchbook::app {

/// What a document may say of value and of the courses open to the owner.
struct Weighed {
  std::optional<report::Worth> worth;  ///< where it is needed, asked for, or sales are given
  std::optional<assess::advice::Finding> courses;  ///< empty: there is no visit to advise on
};

/// Values the record as its reader may see it (`told`: the document says what it is worth), and
/// weighs the courses by the owner's ranking.
/// Errors: those of `value` and `advise`.
[[nodiscard]] base::Result<Weighed> weigh(library::Library& library,
                                          const answers::ValueRequest& asked, bool told,
                                          const recordfile::LoadedRecord& shown,
                                          const assess::Assessment& assessment);

}  // namespace winchbook::app
