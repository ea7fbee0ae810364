#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/decimal.h"
#include "daybook/entry.h"
#include "record/visit.h"

namespace winchbook::daybook {

/// What was agreed with the owner, and how.
struct AgreeRequest : Entry {
  std::string id;    ///< empty: made from the day
  std::string how;   ///< "in person", "by letter"
  std::string with;  ///< a person as named; empty: who brought it
  std::vector<std::string> may_be_done;
  std::vector<std::string> must_stay;        ///< in words
  std::vector<std::string> parts_must_stay;  ///< parts as they were named
  std::vector<std::string> parts_may_leave;  ///< leave to keep or scrap these
  std::optional<base::Money> limit;
  std::optional<forms::Sums> estimate;
  std::string note;
  std::optional<base::EdtfDate> promised_by;  ///< of the visit
  std::vector<std::string> waiting_for;       ///< of the visit: what the work waits for
};

/// Adds the agreement to the visit's dated log, at its day.
[[nodiscard]] base::Result<Said> agree(const AgreeRequest& request, Draft& draft);

/// What was agreed, with an id of its own: the one given, or a free one close to the wish. With
/// whom is nobody's yet. All parts that nothing is called by, together.
[[nodiscard]] base::Result<record::Agreement> agreement_of(Draft& draft,
                                                           const AgreeRequest& request,
                                                           std::string_view wish);

[[nodiscard]] forms::Job agree_job();

}  // namespace winchbook::daybook
