#include "photo/print_size.h"

#include <doctest/doctest.h>

namespace winchbook::photo {
namespace {

TEST_CASE("a photograph is kept at the largest size at which it is ever printed") {
  // 471 ÷ 72 × 300 = 1962.5 and 375 ÷ 72 × 300 = 1562.5
  CHECK(kPrintWidth == 1963);
  CHECK(kPrintHeight == 1563);
  CHECK(print_size({4000, 3000}) == Size{1963, 1472});  // 3000 × 1963 ÷ 4000 = 1472.25
  CHECK(print_size({3000, 4000}) == Size{1172, 1563});  // 3000 × 1563 ÷ 4000 = 1172.25
  CHECK(print_size({6000, 4000}) == Size{1963, 1309});  // 4000 × 1963 ÷ 6000 = 1308.67
  CHECK(print_size({3000, 3000}) == Size{1563, 1563});
  CHECK(print_size({16384, 12288}) == Size{1963, 1472});
}

TEST_CASE("a photograph is never made larger") {
  CHECK(print_size({1963, 1563}) == Size{1963, 1563});
  CHECK(print_size({640, 480}) == Size{640, 480});
  CHECK(fits_print({1963, 1563}));
  CHECK_FALSE(fits_print({1964, 100}));
  CHECK_FALSE(fits_print({100, 1564}));
}

TEST_CASE("the narrowest photograph keeps a pixel") {
  CHECK(print_size({32000, 1}) == Size{1963, 1});
  CHECK(print_size({1, 32000}) == Size{1, 1563});
}

}  // namespace
}  // namespace winchbook::photo
