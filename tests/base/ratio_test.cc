#include "base/ratio.h"

#include <doctest/doctest.h>

namespace winchbook::base {

TEST_CASE("a ratio is kept in lowest terms") {
  CHECK(Ratio(6, 8) == Ratio(3, 4));
  CHECK(Ratio(0, 7) == Ratio());
  CHECK(Ratio(-6, 8).part() == -3);
  CHECK(Ratio(-6, 8).whole() == 4);
}

TEST_CASE("ratios add, take away, multiply and compare exactly") {
  CHECK(Ratio(1, 3) + Ratio(1, 6) == Ratio(1, 2));
  CHECK(Ratio(1, 3) - Ratio(1, 2) == Ratio(-1, 6));
  CHECK(Ratio(2, 3) * Ratio(9, 4) == Ratio(3, 2));
  CHECK(Ratio(-2, 3) * Ratio(9, 4) == Ratio(-3, 2));
  CHECK(Ratio(333, 1000) < Ratio(1, 3));
  CHECK(Ratio(-1, 3) < Ratio(-333, 1000));
}

TEST_CASE("a half is rounded away from nothing") {
  CHECK(Ratio(1, 8).rounded(100) == 13);  // 12.5
  CHECK(Ratio(-1, 8).rounded(100) == -13);
  CHECK(Ratio(1249, 10000).rounded(100) == 12);
  CHECK(Ratio(-1249, 10000).rounded(100) == -12);
  CHECK(Ratio(1, 3).rounded(100) == 33);
  CHECK(Ratio(2, 3).rounded(100) == 67);
  CHECK(Ratio(1, 1).rounded(10000) == 10000);
}

TEST_CASE("rounding down goes towards minus infinity") {
  CHECK(Ratio(1, 8).floored(100) == 12);
  CHECK(Ratio(-1, 8).floored(100) == -13);
  CHECK(Ratio(-12, 100).floored(100) == -12);
}

TEST_CASE("parts of a very large whole stay exact") {
  const Wide whole = Wide{1'000'000'000'000} * 1'000'000'000'000;
  Ratio sum;
  for (int i = 0; i < 1000; ++i)
    sum = sum + Ratio(whole / 1000 - 1, whole);
  CHECK(sum == Ratio(whole - 1000, whole));
  CHECK(sum < Ratio(1, 1));
}

}  // namespace winchbook::base
