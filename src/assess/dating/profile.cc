#include "assess/dating/profile.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace winchbook::assess::dating {
namespace {

/// Sums of shares differ from what was meant by rounding only.
constexpr double kRounding = 1e-9;

/// How often a year is halved: 0 within all soft ends; else by the one that speaks against it most.
double halvings(std::int64_t year, std::span<const SoftEnd> soft) {
  double most = 0;
  for (const SoftEnd& end : soft) {
    const std::int64_t beyond = end.is_beginning ? end.year - year : year - end.year;
    if (beyond > 0) most = std::max(most, static_cast<double>(beyond) / end.halving);
  }
  return most;
}

/// Only the innermost soft end of each side and halving can count; thousands of marks come down to
/// a few.
std::vector<SoftEnd> sternest(std::span<const SoftEnd> soft) {
  std::map<std::pair<bool, int>, SoftEnd> most;
  for (const SoftEnd& end : soft) {
    const auto [at, fresh] = most.try_emplace({end.is_beginning, end.halving}, end);
    if (fresh) continue;
    const bool sterner = end.is_beginning ? end.year > at->second.year : end.year < at->second.year;
    if (sterner) at->second = end;
  }
  std::vector<SoftEnd> ends;
  for (const auto& [key, end] : most)
    ends.push_back(end);
  return ends;
}

}  // namespace

std::vector<double> aoristic_weights(const Stretch& span, std::span<const Stretch> bins) {
  std::vector<double> weights(bins.size(), 0.0);
  if (span.to <= span.from) return weights;
  for (std::size_t i = 0; i < bins.size(); ++i) {
    const std::int64_t overlap = std::min(span.to, bins[i].to) - std::max(span.from, bins[i].from);
    if (overlap > 0) {
      weights[i] = static_cast<double>(overlap) / static_cast<double>(span.to - span.from);
    }
  }
  return weights;
}

YearProfile year_profile(const DaySpan& within, std::span<const SoftEnd> soft,
                         std::int64_t most_years) {
  if (!within.first || !within.last || within.empty()) return {};
  const std::int64_t first = within.first->year;
  const std::int64_t last = within.last->year;
  if (last - first >= most_years) return {};
  std::vector<Stretch> years;
  for (std::int64_t year = first; year <= last; ++year) {
    years.push_back({base::day_number({year, 1, 1}), base::day_number({year + 1, 1, 1})});
  }
  const Stretch days{base::day_number(*within.first), base::day_number(*within.last) + 1};
  const std::vector<double> weights = aoristic_weights(days, years);
  const std::vector<SoftEnd> ends = sternest(soft);
  std::vector<double> halved;
  for (std::int64_t year = first; year <= last; ++year)
    halved.push_back(halvings(year, ends));
  // Counted from the year that is halved least, so that nothing vanishes where all years are
  // beyond some end.
  const double least = *std::min_element(halved.begin(), halved.end());
  YearProfile profile;
  double all = 0;
  for (std::size_t i = 0; i < weights.size(); ++i) {
    const double share = weights[i] * std::exp2(least - halved[i]);
    profile.emplace_back(first + static_cast<std::int64_t>(i), share);
    all += share;
  }
  for (auto& [year, share] : profile)
    share /= all;
  return profile;
}

std::optional<YearRange> shortest_range(const YearProfile& profile, double share) {
  std::optional<YearRange> best;
  double held = 0;
  std::size_t from = 0;
  for (std::size_t to = 0; to < profile.size(); ++to) {
    held += profile[to].second;
    while (from < to && held - profile[from].second >= share - kRounding) {
      held -= profile[from].second;
      ++from;
    }
    if (held < share - kRounding) continue;
    const YearRange range{profile[from].first, profile[to].first};
    if (!best || range.last - range.first < best->last - best->first) best = range;
  }
  return best;
}

}  // namespace winchbook::assess::dating
