#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "daybook/entry.h"

namespace winchbook::daybook {

/// What a course costs and does: "make-it-fish: 260 to 340 GBP: what it does"; the sum and the
/// effect may be left out.
struct CostOfCourse {
  record::Course course{};
  std::optional<forms::Sums> sums;
  std::string effect;
};
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, CostOfCourse& into);

/// What the bench advised and what the owner chose.
struct DecideRequest : Entry {
  std::optional<record::Course> advised;
  std::string because;  ///< of the advice
  std::vector<CostOfCourse> costs;
  std::optional<record::Course> chosen;
  std::string chosen_by;  ///< empty: who brought the reel
  std::string chosen_because;
};

/// Writes the advice down, or the owner's choice beside it; what is given anew is set anew.
[[nodiscard]] base::Result<Said> decide(const DecideRequest& request, Draft& draft);

[[nodiscard]] forms::Job decide_job();

}  // namespace winchbook::daybook
