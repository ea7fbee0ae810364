#include "layout/paragraph_breaker.h"

#include <algorithm>
#include <cstdint>

namespace winchbook::layout {
namespace {

using base::Length;

constexpr std::int64_t kHyphenCost = 900;
constexpr std::int64_t kTooWideCost = 1'000'000;

/// One way to reach a stop in a number of lines.
struct Node {
  std::size_t lines = 0;
  std::int64_t cost = 0;
  int from_stop = -1;
  std::size_t from_node = 0;
};

/// The ways to reach one stop that are worth going on from: in the fewest lines, or in one more.
using Ways = std::vector<Node>;

void keep_better(Ways& ways, const Node& node) {
  for (Node& known : ways) {
    if (known.lines != node.lines) continue;
    if (node.cost < known.cost) known = node;
    return;
  }
  ways.push_back(node);
}

void forget_long_ways(Ways& ways) {
  if (ways.size() < 2) return;
  const auto fewest = std::min_element(
      ways.begin(), ways.end(), [](const Node& a, const Node& b) { return a.lines < b.lines; });
  const std::size_t most = fewest->lines + 1;
  std::erase_if(ways, [&](const Node& node) { return node.lines > most; });
}

std::int64_t cost_of(Length gap, bool last, bool lone_word, Length width) {
  const std::int64_t points = gap.thousandths / 1000;
  if (gap.thousandths < 0) return kTooWideCost;
  if (!last) return points * points;
  const std::int64_t third = width.thousandths / 3000;
  const std::int64_t missing = points - 2 * third;
  return lone_word && missing > 0 ? 400 + missing * missing : 0;
}

/// Breaks the stops [first, last], where `last` ends the text or is mandatory.
void break_stretch(const std::vector<Stop>& stops, std::size_t first, std::size_t last,
                   const LineWidths& widths, std::vector<std::size_t>& ends) {
  const std::size_t lines_before = ends.size();
  const std::size_t count = last - first + 1;
  std::vector<Ways> ways(count + 1);
  ways[0].push_back({});
  for (std::size_t i = 0; i < count; ++i) {
    forget_long_ways(ways[i]);
    const Length start = first + i == 0 ? Length{} : stops[first + i - 1].next;
    for (std::size_t n = 0; n < ways[i].size(); ++n) {
      const Node here = ways[i][n];
      const Length width = widths.at(lines_before + here.lines);
      for (std::size_t j = i; j < count; ++j) {
        const Stop& stop = stops[first + j];
        const Length gap = width - (stop.end - start);
        if (gap.thousandths < 0 && j > i) break;
        const bool is_last = j + 1 == count;
        const std::int64_t cost = here.cost + (stop.hyphen ? kHyphenCost : 0) +
                                  cost_of(gap, is_last, j == i && here.lines > 0, width);
        keep_better(ways[j + 1], {here.lines + 1, cost, static_cast<int>(i), n});
      }
    }
  }
  const Ways& goals = ways[count];
  const auto best = std::min_element(goals.begin(), goals.end(), [](const Node& a, const Node& b) {
    return a.lines != b.lines ? a.lines < b.lines : a.cost < b.cost;
  });
  std::vector<std::size_t> backwards;
  std::size_t at = count;
  Node node = *best;
  while (at > 0) {
    backwards.push_back(first + at - 1);
    at = static_cast<std::size_t>(node.from_stop);
    if (at > 0) node = ways[at][node.from_node];
  }
  ends.insert(ends.end(), backwards.rbegin(), backwards.rend());
}

}  // namespace

std::vector<std::size_t> break_lines(const std::vector<Stop>& stops, const LineWidths& widths) {
  std::vector<std::size_t> ends;
  std::size_t first = 0;
  for (std::size_t i = 0; i < stops.size(); ++i) {
    if (!stops[i].mandatory && i + 1 < stops.size()) continue;
    break_stretch(stops, first, i, widths, ends);
    first = i + 1;
  }
  return ends;
}

}  // namespace winchbook::layout
