#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "base/edtf_date.h"
#include "knowledge/marks.h"
#include "knowledge/stamp_text.h"

namespace winchbook::knowledge {

/// A date as somebody printed it.
struct StampDate {
  base::Day first;  ///< the day itself, or the first day of its month or year
  base::Day last;
  bool doubtful = false;             ///< the century or the order of day and month was taken
  std::vector<std::string> assumed;  ///< what was taken for what
};

/// What stands at a place: a date, or something that is one by its form and cannot be, or neither
/// (no words).
struct DateRead {
  std::size_t words = 0;
  std::optional<StampDate> date;
  std::string fault;  ///< lower case, without a full stop
  std::string hint;
};

/// Reads "JULY 4, 1911", "Jul. 4-11", "4 July 1911", "7/4/1911", "1911-07-04", "JULY 1911" and,
/// with `bare_year`, "1911". A year of two figures, or figures for the month, mean more than one
/// day: the only one on which US patents were issued is taken, and said; otherwise it is a fault.
[[nodiscard]] DateRead date_at(const std::vector<StampWord>& words, std::size_t at,
                               const IssueDay& issue, bool bare_year);

/// "Tuesday".
[[nodiscard]] std::string_view weekday_name(const base::Day& day);
/// "4 July 1911".
[[nodiscard]] std::string spoken_day(const base::Day& day);

}  // namespace winchbook::knowledge
