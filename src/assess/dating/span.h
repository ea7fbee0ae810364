#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "base/edtf_date.h"

namespace winchbook::assess::dating {

/// Days from `first` to `last`, both within; an end that is not there is not bound. Empty when it
/// ends before it begins.
struct DaySpan {
  std::optional<base::Day> first;
  std::optional<base::Day> last;

  [[nodiscard]] bool empty() const { return first && last && *last < *first; }
  friend bool operator==(const DaySpan&, const DaySpan&) = default;
};

/// The days that both have: [latest beginning, earliest end].
[[nodiscard]] DaySpan common(const DaySpan& a, const DaySpan& b);
[[nodiscard]] bool contains(const DaySpan& span, const base::Day& day);
/// The shortest span that holds both.
[[nodiscard]] DaySpan hull(const DaySpan& a, const DaySpan& b);

/// One way to make the rest agree: who must go, and the days on which all others agree.
struct WayOut {
  std::vector<std::size_t> dropped;  ///< positions, ascending
  DaySpan agreed;
};

/// The fewest that must go, every way in which so few are enough.
struct FewestDropped {
  std::size_t count = 0;     ///< how many must go; 0: all agree
  std::vector<WayOut> ways;  ///< earliest agreement first; one with nothing dropped when all agree
  std::size_t ways_in_all = 0;  ///< more than ways.size() when there are more than `most`
  DaySpan hull;                 ///< from the first day of any way to the last
};

/// The least number of spans without which all others have a day in common, within `bounds`, and
/// each smallest set. On a line the days that most spans share are found by one sweep over the
/// ends, n log n; the sets are as many as there are such stretches, never more than n. A span that
/// is empty, or has no day within `bounds`, is in every set. At most `most` ways are told.
[[nodiscard]] FewestDropped fewest_to_drop(std::span<const DaySpan> spans, const DaySpan& bounds,
                                           std::size_t most = 12);

}  // namespace winchbook::assess::dating
