#include "assess/value/rounding.h"

#include <doctest/doctest.h>

using winchbook::assess::value::rounded_price;
using winchbook::assess::value::RoundPrice;

TEST_CASE("a price is told in two figures, its range never narrowed by rounding") {
  CHECK(rounded_price(86.4, RoundPrice::down) == doctest::Approx(86));
  CHECK(rounded_price(1234, RoundPrice::up) == doctest::Approx(1300));
  CHECK(rounded_price(1234, RoundPrice::down) == doctest::Approx(1200));
  CHECK(rounded_price(1250, RoundPrice::near) == doctest::Approx(1300));
  CHECK(rounded_price(120, RoundPrice::up) == doctest::Approx(120));
  CHECK(rounded_price(4.2, RoundPrice::up) == doctest::Approx(5));
  CHECK(rounded_price(0, RoundPrice::near) == 0);
  CHECK(rounded_price(-3, RoundPrice::near) == 0);
}
