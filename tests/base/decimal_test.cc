#include "base/decimal.h"

#include <doctest/doctest.h>

using winchbook::base::Decimal;

TEST_CASE("a decimal keeps its places and compares by value") {
  const auto price = Decimal::parse("12.50");
  REQUIRE(price);
  CHECK(price->text() == "12.50");
  CHECK(*price == Decimal(125, 1));
  CHECK(*price < Decimal(12501, 3));
  CHECK(Decimal::parse("-0.05")->text() == "-0.05");
  CHECK(Decimal::parse("007")->text() == "7");
}

TEST_CASE("decimals add exactly where binary numbers do not") {
  CHECK((*Decimal::parse("0.1") + *Decimal::parse("0.2")) == *Decimal::parse("0.3"));
  CHECK((*Decimal::parse("1") - *Decimal::parse("0.01")).text() == "0.99");
  CHECK(Decimal::parse("98.4")->approximate() == 98.4);
}

TEST_CASE("what is not a plain number is refused") {
  for (const char* text : {"", "-", ".", "1.", ".5", "1e3", "1,000", "+1", " 1", "1.0.0", "0x10",
                           "NaN", "1234567890123456", "0.1234567890"}) {
    CAPTURE(text);
    CHECK_FALSE(Decimal::parse(text));
  }
  CHECK(to_string(Decimal::parse("12,50").faults().front()) ==
        "error: \"12,50\" is not a number, expected digits such as 12 or 12.50 [number]\n"
        "  hint: write plain digits with a point, without grouping or unit\n");
}
