#pragma once

#include <string_view>
#include <vector>

#include "assess/originality/originality.h"

namespace winchbook::assess::originality {

/// The answer "original" that the index uses, and why it is not always the record's.
struct Originality {
  record::OfThisReel answer = record::OfThisReel::not_determined;
  Reason reason = Reason::original_not_determined;
};

/// A piece made at the bench, or off a donor, is not original whatever is written. One that the
/// record leaves open counts as not original when a bench put it in during a visit to which it had
/// not come: bench work can then never raise the index.
[[nodiscard]] Originality of_this_reel(const record::Record& record, const record::Piece& piece);

[[nodiscard]] Standing standing(const record::Record& record, const record::Piece& piece,
                                record::OfThisReel original);

/// What the piece's surface keeps, from 0 to 1, and why it is a range.
struct SurfaceCredit {
  base::RatioRange kept;
  std::vector<Reason> reasons;
};

[[nodiscard]] SurfaceCredit surface_credit(const record::Record& record, const record::Visit& visit,
                                           const record::Piece& piece, record::Moment moment,
                                           const knowledge::OriginalityRules& rules);

/// What the piece counts in "right for the model", from 0 to 1.
[[nodiscard]] base::RatioRange pattern_credit(const record::Piece& piece,
                                              const knowledge::OriginalityRules& rules);

/// Hundredths of a percent, 0 to 10000; what is finer is cut off.
[[nodiscard]] std::int64_t hundredths(const base::Percent& percent);

}  // namespace winchbook::assess::originality
