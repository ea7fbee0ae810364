#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>
#include <utility>
#include <vector>

#include "assess/dating/evidence.h"
#include "assess/dating/span.h"

namespace winchbook::assess::dating {

/// A stretch of whole numbers, the last one not within: days, or years.
struct Stretch {
  std::int64_t from = 0;
  std::int64_t to = 0;
};

/// The aoristic weight of each bin: the part of `span` that lies in it, overlap / length of span.
/// The weights of bins that cover the span add up to one. An empty span weighs nothing.
[[nodiscard]] std::vector<double> aoristic_weights(const Stretch& span,
                                                   std::span<const Stretch> bins);

/// What the year profile takes for granted. Each is our own setting, not a finding; the reason is
/// printed with the profile.
struct ProfileAssumption {
  std::string_view word;
  std::string_view reason;
};

/// Years beyond a soft end after which a year counts half as much, for a mark that is read clearly.
inline constexpr int kSoftHalving = 1;
/// The same for a mark that is read only in part, and for what is only possible.
inline constexpr int kDoubtfulHalving = 3;
/// After so many halvings a year is no longer reckoned: it weighs less than 1/1000.
inline constexpr int kMostHalvings = 10;

inline constexpr ProfileAssumption kProfileAssumptions[] = {
    {"uniform", "within the window no year is likelier than another (the aoristic rule)"},
    {"soft-halving",
     "each year beyond a soft end counts half as much as the one before: old stock, old moulds and "
     "old "
     "paper are mostly used up within three years (our own setting)"},
    {"doubtful-halving",
     "half as much every three years where the mark is read only in part or the statement is only "
     "possible (our own setting)"},
    {"sternest",
     "of all soft ends the one that speaks against a year most counts, once: marks of one piece, "
     "one "
     "mould or one list are not independent, and saying a thing twice does not make it surer"},
};

/// A soft end and how quickly it gives way.
struct SoftEnd {
  bool is_beginning = false;
  std::int64_t year = 0;
  int halving = kSoftHalving;
};

/// Years and their shares, which add up to one; years in a row.
using YearProfile = std::vector<std::pair<std::int64_t, double>>;

/// The share of each year: aoristic over `within` (day by day, so that a year of which only a part
/// is within counts by that part), times what the soft ends leave of it: 2^-(years beyond /
/// halving) for the end that speaks against it most. Empty when `within` is
/// empty or not bound at both ends, or is longer than `most_years`.
[[nodiscard]] YearProfile year_profile(const DaySpan& within, std::span<const SoftEnd> soft,
                                       std::int64_t most_years = 1000);

struct YearRange {
  std::int64_t first = 0;
  std::int64_t last = 0;

  friend bool operator==(const YearRange&, const YearRange&) = default;
};

/// The shortest run of years that holds at least `share` of the profile, the earliest on ties. Both
/// years are within: one year is [1940, 1940]. Nothing for an empty profile.
[[nodiscard]] std::optional<YearRange> shortest_range(const YearProfile& profile, double share);

}  // namespace winchbook::assess::dating
