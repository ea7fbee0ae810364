#pragma once

#include <string>
#include <string_view>

#include "assess/assessment.h"
#include "json/json.h"

namespace winchbook::answers {

/// The words by which `winchbook grade` tells answers in JSON; each is the last part of its key in
/// the catalogue.
struct Term {
  std::string_view word;         ///< "came-loose"
  std::string_view spoken = {};  ///< where JSON tells a sentence
};

[[nodiscard]] Term term(assess::originality::Standing standing);
[[nodiscard]] Term term(assess::originality::Reason reason);
[[nodiscard]] Term term(assess::originality::Return::Outcome outcome);
[[nodiscard]] Term term(assess::originality::Return::Because because);
[[nodiscard]] Term term(assess::condition::AreaBasis basis);
[[nodiscard]] Term term(record::SurfaceState state);
[[nodiscard]] Term term(record::Severity severity);

/// A share of one as points of a hundred with `places` decimals: "91.3".
[[nodiscard]] std::string points(base::Ratio share, int places);
/// "90.1 to 93.2", or one figure when nothing is left open.
[[nodiscard]] std::string points(const base::RatioRange& range, int places);

/// Which reel it is, as every answer in JSON tells it.
[[nodiscard]] json::Json identity_as_json(const assess::Identity& reel);

}  // namespace winchbook::answers
