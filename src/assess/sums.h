#pragma once

#include <vector>

#include "record/record.h"

namespace winchbook::assess {

/// What a visit took, as far as it was written down. Currencies are never added to each other: one
/// sum each, in the order in which they come. Example: parts of 2.40, 1.80 and 14.50 GBP are one
/// sum of 18.70 GBP.
struct Sums {
  base::Decimal hours;             ///< hours = Σ hours of each piece of work
  std::vector<base::Money> parts;  ///< Σ what was paid for the material of each piece of work
  /// Σ cost of the donors acquired since the reel was taken in; one acquired on a day that may be
  /// later counts.
  std::vector<base::Money> donors;
};

[[nodiscard]] Sums sums(const record::Record& record, const record::Visit& visit);

/// The last agreement of the visit that names a limit of cost, or null.
[[nodiscard]] const record::Agreement* agreed_limit(const record::Visit& visit);

}  // namespace winchbook::assess
