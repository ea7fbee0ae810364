#pragma once

#include <string>
#include <vector>

#include "base/edtf_date.h"
#include "daybook/edit.h"

namespace winchbook::daybook {

/// What the bench advised and what the owner chose.
struct DecideRequest {
  base::Day on;
  std::string advised;             ///< a course: "make-it-fish"
  std::string because;             ///< of the advice
  std::vector<std::string> costs;  ///< "make-it-fish: 260 to 340 GBP: what it does"
  std::string chosen;              ///< a course
  std::string chosen_by;           ///< empty: who brought the reel
  std::string chosen_because;
};

/// Writes the advice down, or the owner's choice beside it; what is given anew is set anew.
[[nodiscard]] Change decide(DecideRequest request);

}  // namespace winchbook::daybook
