#include "assess/value/rounding.h"

#include <algorithm>
#include <cmath>

namespace winchbook::assess::value {

double rounded_price(double amount, RoundPrice how) {
  if (!(amount > 0)) return 0;
  const double step = std::pow(10, std::max(0.0, std::floor(std::log10(amount)) - 1));
  constexpr double kDoubt = 1e-9;
  const double steps = amount / step;
  const double whole = how == RoundPrice::down ? std::floor(steps + kDoubt)
                       : how == RoundPrice::up ? std::ceil(steps - kDoubt)
                                               : std::round(steps);
  return whole * step;
}

}  // namespace winchbook::assess::value
