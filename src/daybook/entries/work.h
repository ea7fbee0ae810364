#pragma once

#include <optional>
#include <string>
#include <vector>

#include "daybook/entry.h"

namespace winchbook::daybook {

/// Work that was done.
struct WorkRequest : Entry {
  std::string what;
  std::vector<std::string> parts;
  std::string by;  ///< empty: not written
  std::optional<base::Hours> hours;
  std::optional<base::Money> parts_cost;
  std::string agreed;              ///< the agreement that allows what a limit forbids
  bool done_already = false;       ///< in spite of a hazard (hazards.h)
  std::optional<base::Day> until;  ///< the last day, when it took several
  std::optional<forms::Degree> way_back;
  std::optional<forms::Labelled> caution;
};

/// Adds the work to the visit, with the cautions of what it tells. Errors: it makes dust of what no
/// eye can tell (hazards.h); it breaks what was agreed (limits.h).
[[nodiscard]] base::Result<Said> work(const WorkRequest& request, Draft& draft);

[[nodiscard]] forms::Job work_job();

}  // namespace winchbook::daybook
