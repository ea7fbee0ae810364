#include "assess/value/apart.h"

#include <doctest/doctest.h>

namespace winchbook::assess::value {
namespace {

Estimate estimate(double low, double middle, double high) {
  Estimate one;
  one.method = Method::regression;
  one.low = low;
  one.middle = middle;
  one.high = high;
  return one;
}

}  // namespace

TEST_CASE("two states are told apart only where neither's middle lies within the other's range") {
  CHECK_FALSE(told_apart(estimate(89, 130, 180), estimate(91, 135, 180)));
  CHECK_FALSE(told_apart(estimate(100, 130, 170), estimate(86, 110, 140)));
  CHECK_FALSE(told_apart(estimate(10, 200, 210), estimate(90, 100, 110)));  // one is very wide
  CHECK(told_apart(estimate(90, 100, 110), estimate(115, 120, 125)));
  CHECK(told_apart(estimate(90, 100, 112), estimate(105, 120, 125)));
}

}  // namespace winchbook::assess::value
