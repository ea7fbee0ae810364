#include "assess/value/apart.h"

namespace winchbook::assess::value {

bool told_apart(const Estimate& one, const Estimate& other) {
  const auto outside = [](double middle, const Estimate& range) {
    return middle < range.low || middle > range.high;
  };
  return outside(one.middle, other) && outside(other.middle, one);
}

}  // namespace winchbook::assess::value
