#pragma once

#include <string_view>
#include <vector>

#include "assess/care/care.h"
#include "assess/condition/condition.h"
#include "assess/dating/dating.h"
#include "assess/identity.h"
#include "assess/originality/originality.h"
#include "assess/strip/strip.h"
#include "assess/sums.h"
#include "knowledge/knowledge.h"
#include "record/enum_words.h"
#include "record/record.h"

namespace winchbook::assess {

/// The answers about one stay at the bench.
struct VisitAssessment {
  record::VisitId visit;
  originality::Finding originality;
  condition::Finding condition;
  strip::Finding strip;
  care::Finding care;
  Sums sums;
};

/// Every question's answer, visit by visit, earliest first. The last visit is the one being told.
struct Assessment {
  Identity identity;
  dating::Finding dating;  ///< of the reel; visits do not change when it was made
  std::vector<VisitAssessment> visits;

  /// Null when the record has no visit.
  [[nodiscard]] const VisitAssessment* last() const {
    return visits.empty() ? nullptr : &visits.back();
  }
};

/// Asks the questions in order; none sees another's answer.
[[nodiscard]] Assessment assess(const record::Record& record,
                                const knowledge::Knowledge& knowledge);

}  // namespace winchbook::assess
