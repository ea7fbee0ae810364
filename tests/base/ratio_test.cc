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

TEST_CASE("a range is told outwards, and a share as the whole only when it is") {
  const auto told_as = [](Ratio low, Ratio high) { return told({low, high}, 100); };
  CHECK(told_as({995, 1000}, {1, 1}).low == 99);
  CHECK(told_as({995, 1000}, {1, 1}).high == 100);
  CHECK(told_as({561, 1000}, {649, 1000}).low == 56);
  CHECK(told_as({561, 1000}, {649, 1000}).high == 65);
  CHECK(told_as({874, 1000}, {874, 1000}).high == 87);
  CHECK(told_as({876, 1000}, {876, 1000}).low == 88);
  CHECK(told_as({997, 1000}, {997, 1000}).high == 99);
  CHECK(told_as({3, 1000}, {3, 1000}).low == 1);
  CHECK(told_as({1, 1}, {1, 1}).low == 100);
  CHECK(told_as({0, 1}, {0, 1}).high == 0);
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
