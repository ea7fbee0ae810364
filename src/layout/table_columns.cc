#include "layout/table_columns.h"

#include <algorithm>
#include <cstdint>

namespace winchbook::layout {
namespace {

using base::Length;

bool by_content(const ColumnNeed& need) {
  return need.fixed.thousandths == 0;
}

/// Splits `whole` in proportion to `weights`, to the last thousandth.
std::vector<Length> shared(Length whole, const std::vector<Length>& weights) {
  std::int64_t all = 0;
  for (const Length weight : weights)
    all += weight.thousandths;
  std::vector<Length> shares;
  std::int64_t passed = 0;
  std::int64_t given = 0;
  for (const Length weight : weights) {
    passed += weight.thousandths;
    const std::int64_t upto = all == 0 ? 0 : whole.thousandths * passed / all;
    shares.push_back({static_cast<std::int32_t>(upto - given)});
    given = upto;
  }
  return shares;
}

/// The widest give way, down to one width for all of them, until everything fits.
std::vector<Length> capped(std::vector<Length> widths, Length total) {
  const auto sum_at = [&](Length cap) {
    Length sum;
    for (const Length width : widths)
      sum += std::min(width, cap);
    return sum;
  };
  Length low;
  Length high = total;
  while (high - low > Length{1}) {
    const Length middle = low + (high - low) / 2;
    (sum_at(middle) <= total ? low : high) = middle;
  }
  for (Length& width : widths)
    width = std::min(width, low);
  return widths;
}

}  // namespace

std::vector<Length> column_widths(std::vector<ColumnNeed> needs, Length total, Length gap) {
  for (std::size_t i = 0; i + 1 < needs.size(); ++i) {
    needs[i].least += gap;
    needs[i].most += gap;
  }
  Length fixed;
  Length least;
  Length most;
  for (const ColumnNeed& need : needs) {
    fixed += need.fixed;
    if (!by_content(need)) continue;
    least += need.least;
    most += std::max(need.most, need.least);
  }
  std::vector<Length> widths;
  std::vector<Length> weights;
  const Length room = total - fixed;
  for (const ColumnNeed& need : needs) {
    const Length wanted = std::max(need.most, need.least);
    const bool content = by_content(need);
    widths.push_back(!content ? need.fixed : room >= most ? wanted : need.least);
    weights.push_back(!content ? Length{} : room >= most ? wanted : wanted - need.least);
  }
  if (fixed + least > total) return capped(widths, total);
  const Length spare = room - (room >= most ? most : least);
  const std::vector<Length> more = shared(spare, weights);
  for (std::size_t i = 0; i < widths.size(); ++i)
    widths[i] += more[i];
  if (!widths.empty() && std::none_of(needs.begin(), needs.end(), by_content)) {
    widths.back() += room;
  }
  return widths;
}

}  // namespace winchbook::layout
