#pragma once

#include <optional>
#include <string>
#include <vector>

#include "assess/fitting/seat.h"
#include "daybook/entries/fit.h"

namespace winchbook::daybook {

/// A seat as it was measured, and the washers that were judged for it.
struct JudgedSeat {
  const assess::fitting::Seat& seat;
  double caliper = 0.1;  ///< ± of the stock's figures, mm
  int wanted = 1;        ///< how many
  const std::vector<assess::fitting::Candidate>& candidates;
};

/// A washer of the stock that is chosen for a part's place, and what only the bench can say of it.
struct SeatChoice {
  std::string part;         ///< the part whose place it takes, as it was named
  std::optional<int> line;  ///< of the stock file
  FitRequest said;  ///< name, why, way back, label and day; the rest follows from the choice
};

/// Enters the choice as `fit` would: donor, material, count, seat and what is to be trimmed follow
/// from the seat; place, count and the way back from the part. Errors: no such line in the stock,
/// a washer that does not fit, too few of it; and those of `fit`.
[[nodiscard]] base::Result<Said> fit_choice(const JudgedSeat& judged, const SeatChoice& choice,
                                            Draft& draft);

/// What is altered on the washers, in a sentence: "Trimmed 0.4 mm on the outside, from 23.8 to
/// 23.4 mm, so that they turn freely. Holes and thickness as they came."
[[nodiscard]] std::string adaptation_of(const assess::fitting::Candidate& candidate);

}  // namespace winchbook::daybook
