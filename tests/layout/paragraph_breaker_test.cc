#include "layout/paragraph_breaker.h"

#include <doctest/doctest.h>

#include <string>

namespace winchbook::layout {
namespace {

using base::Length;
using base::points;

/// Words of so many letters, each a point wide, a point between them.
std::vector<Stop> words(const std::vector<int>& letters) {
  std::vector<Stop> stops;
  Length at;
  for (const int count : letters) {
    const Length end = at + points(count);
    stops.push_back({end, end + points(1)});
    at = end + points(1);
  }
  return stops;
}

std::vector<std::size_t> ends(const std::vector<Stop>& stops, double width) {
  return break_lines(stops, {.rest = points(width)});
}

}  // namespace

TEST_CASE("no stop gives no line, and one word stands alone") {
  CHECK(break_lines({}, {.rest = points(10)}).empty());
  CHECK(ends(words({4}), 10) == std::vector<std::size_t>{0});
}

TEST_CASE("a line is filled to its width exactly") {
  // 4 + 1 + 5 = 10
  CHECK(ends(words({4, 5, 9}), 10) == std::vector<std::size_t>{1, 2});
  CHECK(ends(words({4, 6, 9}), 10) == std::vector<std::size_t>{0, 1, 2});
}

TEST_CASE("the whole paragraph is evened, not each line filled") {
  // Filling each line would give 3+2+5 | 6 | 9+…: "aaa bb" / "ccccc" is evener than "aaa bb ccccc".
  const std::vector<Stop> stops = words({3, 2, 2, 5, 6});
  // Greedy: "3 2 2" (9) | "5" (5, as 6 does not fit) | "6". Even: "3 2" (6) | "2 5" (8) | "6".
  CHECK(ends(stops, 9) == std::vector<std::size_t>{1, 3, 4});
}

TEST_CASE("there are never more lines than filling each would give") {
  for (int seed = 1; seed < 200; ++seed) {
    std::vector<int> letters;
    unsigned state = static_cast<unsigned>(seed);
    for (int i = 0; i < 40; ++i) {
      state = state * 1103515245U + 12345U;
      letters.push_back(1 + static_cast<int>((state >> 16U) % 9U));
    }
    int greedy = 1;
    int used = -1;
    for (const int count : letters) {
      if (used >= 0 && used + 1 + count > 20) {
        ++greedy;
        used = -1;
      }
      used += 1 + count;
    }
    CHECK(ends(words(letters), 20).size() == static_cast<std::size_t>(greedy));
  }
}

TEST_CASE("a single short word does not stand alone in the last line") {
  // Filled: "4 4 4" | "4 4 4" | "2"; the last line takes a word more.
  const std::vector<std::size_t> lines = ends(words({4, 4, 4, 4, 4, 4, 2}), 14);
  REQUIRE(lines.size() == 3);
  CHECK(lines[1] == 4);
}

TEST_CASE("a mandatory stop ends its line and counts as a last line") {
  std::vector<Stop> stops = words({2, 2, 9});
  stops[0].mandatory = true;
  CHECK(ends(stops, 14) == std::vector<std::size_t>{0, 2});
}

TEST_CASE("a stretch wider than its line stands over, and the rest goes on") {
  CHECK(ends(words({3, 30, 3}), 10) == std::vector<std::size_t>{0, 1, 2});
}

TEST_CASE("first lines may be narrower") {
  const std::vector<Stop> stops = words({4, 4, 12});
  CHECK(break_lines(stops, {.rest = points(22)}) == std::vector<std::size_t>{2});
  CHECK(break_lines(stops, {.first = {points(9)}, .rest = points(22)}) ==
        std::vector<std::size_t>{1, 2});
}

TEST_CASE("a hyphen is set only where it saves more than it costs") {
  std::vector<Stop> stops = words({6, 3, 4});
  stops.insert(stops.begin() + 1, Stop{points(9), points(8), false, true});
  // Without it the lines are 10 and 4 wide: nothing gained by cutting.
  CHECK(ends(stops, 10) == std::vector<std::size_t>{2, 3});
}

}  // namespace winchbook::layout
