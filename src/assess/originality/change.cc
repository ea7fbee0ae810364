#include <algorithm>
#include <numeric>
#include <optional>
#include <vector>

#include "assess/originality/originality.h"

namespace winchbook::assess::originality {
namespace {

using base::Ratio;

/// Whole steps that add up to `total`: each share rounded down, and what is left over given to the
/// largest remainders, the first row on ties.
std::vector<std::int64_t> apportioned(const std::vector<Ratio>& shares, std::int64_t steps,
                                      std::int64_t total) {
  std::vector<std::int64_t> whole;
  std::vector<Ratio> remainder;
  for (const Ratio& share : shares) {
    whole.push_back(share.floored(steps));
    remainder.push_back(share - Ratio(whole.back(), steps));
  }
  std::vector<std::size_t> order(shares.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return remainder[a] > remainder[b]; });
  std::int64_t over = total - std::accumulate(whole.begin(), whole.end(), std::int64_t{0});
  for (const std::size_t row : order) {
    if (over <= 0) break;
    ++whole[row];
    --over;
  }
  return whole;
}

}  // namespace

std::vector<PrintedShare> printed(const Index& index, const Change& change, std::int64_t steps) {
  if (!index.found || !index.left) return {};
  std::vector<Ratio> lows;
  std::vector<Ratio> highs;
  for (const Share& share : change.shares) {
    lows.push_back(share.low);
    highs.push_back(share.high);
  }
  const auto low =
      apportioned(lows, steps, index.left->low.rounded(steps) - index.found->low.rounded(steps));
  const auto high =
      apportioned(highs, steps, index.left->high.rounded(steps) - index.found->high.rounded(steps));
  std::vector<PrintedShare> out;
  for (std::size_t i = 0; i < change.shares.size(); ++i) {
    out.push_back({change.shares[i].row, low[i], high[i]});
  }
  return out;
}

}  // namespace winchbook::assess::originality
