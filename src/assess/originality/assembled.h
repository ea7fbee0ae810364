#pragma once

#include <optional>

#include "assess/originality/originality.h"

namespace winchbook::assess::originality {

/// Whether no one reel gave at least the dominant share of the weight that is there. What is not
/// determined counts for every reel at once, so that only what is certain is called assembled.
[[nodiscard]] std::optional<Assembled> assembled(const record::Record& record,
                                                 const Finding& finding, record::Moment moment,
                                                 const knowledge::OriginalityRules& rules);

/// From how many reels it is put together: those that each gave at least the share of another reel
/// (OriginalityRules::another_percent) of the weight that is there. One while no two did.
[[nodiscard]] int reels_of_weight(const record::Record& record, const Finding& finding,
                                  record::Moment moment, const knowledge::OriginalityRules& rules);

}  // namespace winchbook::assess::originality
