#pragma once

#include <vector>

#include "assess/assessment.h"
#include "assess/value/sale.h"
#include "knowledge/prices.h"
#include "record/record.h"

namespace winchbook::assess {

/// A state of the reel that is valued.
struct ValuedState {
  enum class Kind { found, left } kind = Kind::found;
  value::State state;
};

/// The piece that is the reel's box: by its name, and of this reel by the bench's judgement. Null
/// where there is none, or it is no longer with the reel.
[[nodiscard]] const record::Piece* box_of(const record::Record& record,
                                          const knowledge::BoxWords& words);

/// The reel as prices see it, as found and as left in its last visit; none without a visit. An axis
/// that is open between several words is not told, nor is originality over more than ten points.
[[nodiscard]] std::vector<ValuedState> valued_states(const record::Record& record,
                                                     const Assessment& assessment,
                                                     const knowledge::BoxWords& words);

}  // namespace winchbook::assess
