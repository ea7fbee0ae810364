#include "answers/figures.h"

#include <doctest/doctest.h>

#include "answers/value_terms.h"

namespace winchbook::answers {
namespace {

/// What is wrong with a text; empty when it is read.
template <class Value> std::string fault_in(std::string_view typed, Value& into) {
  const auto faults = read_typed(typed, into);
  return faults.empty() ? "" : faults.front().message;
}

}  // namespace

TEST_CASE("a ratio is turns for one, or teeth of gear and pinion") {
  Gearing gearing;
  CHECK(fault_in("3 : 1", gearing).empty());
  CHECK(gearing.ratio == 3);
  CHECK(fault_in("48:12", gearing).empty());
  CHECK(gearing.ratio == 4);
  CHECK(fault_in("5.5", gearing).empty());
  CHECK(gearing.ratio == 5.5);
  for (const char* wrong : {"3:0", "0:1", "-3:1", "3;1", ":", "", "1e3:1"}) {
    CHECK(fault_in(wrong, gearing) == "\"" + std::string(wrong) + "\" is not a ratio");
  }
  CHECK(gearing.ratio == 5.5);
}

TEST_CASE("a range is one number, or from low to high") {
  NumberRange range;
  CHECK(fault_in("0.2", range).empty());
  CHECK(range.low == 0.2);
  CHECK(range.high == 0.2);
  CHECK(fault_in("0.15..0.25", range).empty());
  CHECK(range.low == 0.15);
  CHECK(range.high == 0.25);
  CHECK(fault_in("some", range) == "\"some\" is neither a number nor a range");
  CHECK(fault_in("0.1..", range) == "\"0.1..\" is neither a number nor a range");
}

TEST_CASE("what a figure was taken for is told with its option") {
  std::optional<forms::Measured<base::Dimension::force>> pull;
  REQUIRE(forms::read_typed("20 lb", pull).empty());
  std::vector<std::string> assumed;
  CHECK(*figure_of("--line", pull, assumed) == doctest::Approx(88.96).epsilon(0.001));
  REQUIRE(assumed.size() == 1);
  CHECK(assumed.front().starts_with("--line: \"20 lb\" is taken as a pull"));
  pull.reset();
  CHECK_FALSE(figure_of("--line", pull, assumed));
  CHECK(assumed.size() == 1);
}

TEST_CASE("each length that cannot be left out is told, and those that were given are not") {
  TypedLength bore;
  TypedLength sleeve;
  CHECK(missing_among({{"--bore", bore}, {"--sleeve", sleeve}}).size() == 2);
  REQUIRE(forms::read_typed("22 mm", bore).empty());
  const auto faults = missing_among({{"--bore", bore}, {"--sleeve", sleeve}});
  REQUIRE(faults.size() == 1);
  CHECK(faults.front().message == "--sleeve: is missing");
}

TEST_CASE("a currency is one of ISO 4217, in capitals") {
  Currency currency;
  CHECK(fault_in("GBP", currency).empty());
  CHECK(currency.code == "GBP");
  CHECK(fault_in("pounds", currency) == "there is no currency \"pounds\"");
  CHECK(currency.code == "GBP");
}

}  // namespace winchbook::answers
