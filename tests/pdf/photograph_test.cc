#include "pdf/photograph.h"

#include <doctest/doctest.h>

#include <array>
#include <utility>

namespace winchbook::pdf {
namespace {

enum class Side { left, right, top, bottom };

using Edge = std::array<std::pair<int, int>, 2>;

/// Where an edge of the stored picture's unit square (y up) comes to lie.
Side side_of(const std::array<int, 6>& m, const Edge& edge) {
  const auto mapped = [&](std::pair<int, int> p) {
    return std::pair<int, int>{m[0] * p.first + m[2] * p.second + m[4],
                               m[1] * p.first + m[3] * p.second + m[5]};
  };
  const auto a = mapped(edge[0]);
  const auto b = mapped(edge[1]);
  if (a.first == b.first) return a.first == 0 ? Side::left : Side::right;
  return a.second == 0 ? Side::bottom : Side::top;
}

// CIPA DC-008-2019 (Exif 2.32), 4.6.4, tag 274: where row 0 and column 0 lie in the visual image.
TEST_CASE("each of the eight orientations is set upright as Exif says") {
  struct Row {
    int orientation;
    Side row_0;
    Side column_0;
  };
  const Row rows[] = {{1, Side::top, Side::left},     {2, Side::top, Side::right},
                      {3, Side::bottom, Side::right}, {4, Side::bottom, Side::left},
                      {5, Side::left, Side::top},     {6, Side::right, Side::top},
                      {7, Side::right, Side::bottom}, {8, Side::left, Side::bottom}};
  const Edge row_0 = {{{0, 1}, {1, 1}}};     // the stored picture's upper edge
  const Edge column_0 = {{{0, 0}, {0, 1}}};  // and its left one
  for (const Row& row : rows) {
    CAPTURE(row.orientation);
    const auto matrix = upright(row.orientation);
    CHECK(side_of(matrix, row_0) == row.row_0);
    CHECK(side_of(matrix, column_0) == row.column_0);
  }
}

TEST_CASE("an orientation nobody knows counts as upright") {
  CHECK(upright(0) == upright(1));
  CHECK(upright(9) == upright(1));
}

}  // namespace
}  // namespace winchbook::pdf
