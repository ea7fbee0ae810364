#pragma once

#include <cstddef>
#include <vector>

#include "assess/value/expected.h"
#include "assess/valued_states.h"
#include "base/edtf_date.h"

namespace winchbook::report {

/// What recorded sales say of the reel, with the question and the rules they were asked by. Told
/// only where it was asked for: a keepsake goes from hand to hand, and a figure outlives its day.
struct Worth {
  assess::value::Question question;
  std::vector<assess::ValuedState> states;  ///< one for each estimate
  assess::value::Finding finding;
  knowledge::PriceRules rules;
  std::vector<assess::value::CourseState> courses;  ///< all four
  std::size_t older = 0;                            ///< sales of the model that were not used

  /// Null when that state was not valued.
  [[nodiscard]] const assess::value::Estimate* estimate(assess::ValuedState::Kind kind) const {
    for (std::size_t i = 0; i < states.size() && i < finding.estimates.size(); ++i) {
      if (states[i].kind == kind) return &finding.estimates[i];
    }
    return nullptr;
  }
};

}  // namespace winchbook::report
