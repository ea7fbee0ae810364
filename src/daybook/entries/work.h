#pragma once

#include <string>
#include <vector>

#include "base/edtf_date.h"
#include "daybook/edit.h"

namespace winchbook::daybook {

/// Work that was done.
struct WorkRequest {
  base::Day on;
  std::string until;  ///< the last day, when it took several
  std::string what;
  std::vector<std::string> parts;
  std::string by;     ///< empty: the bench's first restorer
  std::string hours;  ///< "1.25"
  std::string parts_cost;
  std::string way_back;
  std::string caution;
  std::string agreed;  ///< the agreement that allows what a limit forbids
};

/// Adds the work to the visit. Error: it breaks what was agreed (app/limits.h).
[[nodiscard]] Change work(WorkRequest request);

}  // namespace winchbook::daybook
