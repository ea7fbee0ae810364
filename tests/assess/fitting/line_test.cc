#include "assess/fitting/line.h"

#include <doctest/doctest.h>

#include <array>

namespace {

using namespace winchbook::assess::fitting;

}  // namespace

// Reckoned apart from the program, by the rule that the room is length times diameter squared.
TEST_CASE("capacity goes by the square of the diameter") {
  struct Case {
    double length;
    double from;
    double to;
    double expected;
  };
  constexpr std::array kCases{Case{200, 0.3, 0.2, 450.0},      Case{200, 0.3, 0.25, 288.0},
                              Case{200, 0.3, 0.3, 200.0},      Case{200, 0.3, 0.35, 146.938776},
                              Case{200, 0.3, 0.4, 112.5},      Case{200, 0.3, 0.5, 72.0},
                              Case{300, 0.4, 0.2, 1200.0},     Case{300, 0.4, 0.25, 768.0},
                              Case{300, 0.4, 0.3, 533.333333}, Case{300, 0.4, 0.35, 391.836735},
                              Case{300, 0.4, 0.5, 192.0},      Case{100, 0.25, 0.2, 156.25},
                              Case{100, 0.25, 0.3, 69.444444}, Case{100, 0.25, 0.35, 51.020408},
                              Case{100, 0.25, 0.4, 39.0625},   Case{100, 0.25, 0.5, 25.0}};
  for (const Case& one : kCases) {
    CHECK(capacity({one.length, one.from}, one.to) == doctest::Approx(one.expected).epsilon(1e-6));
  }
}

// Teeth and diameters: 48 on 12 with 45 mm winds 565.49 mm (22.263 in), and so on.
TEST_CASE("a turn of the handle winds pi times diameter times ratio") {
  CHECK(retrieve(30, 48.0 / 12) == doctest::Approx(376.991118).epsilon(1e-8));
  CHECK(retrieve(45, 48.0 / 12) == doctest::Approx(565.486678).epsilon(1e-8));
  CHECK(retrieve(60, 60.0 / 20) == doctest::Approx(565.486678).epsilon(1e-8));
  CHECK(retrieve(45, 53.0 / 13) == doctest::Approx(576.361421).epsilon(1e-8));
  CHECK(retrieve(60, 1) / 25.4 == doctest::Approx(7.421085).epsilon(1e-6));
}

TEST_CASE("backing fills what the line leaves") {
  const auto under = backing({200, 0.3}, {100, 0.2}, 0.4);
  REQUIRE(under);
  CHECK(*under == doctest::Approx((200 * 0.09 - 100 * 0.04) / 0.16));
  // both together take exactly the room
  CHECK(*under * 0.16 + 100 * 0.04 == doctest::Approx(200 * 0.09));
  CHECK_FALSE(backing({200, 0.3}, {451, 0.2}, 0.4));
  CHECK(*backing({200, 0.3}, {450, 0.2}, 0.4) == doctest::Approx(0));
}
