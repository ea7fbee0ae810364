#include "forms/read_typed.h"

#include <doctest/doctest.h>

#include <string>

#include "record/enum_words.h"

namespace winchbook::forms {
namespace {

template <class Value> std::string fault_of(std::string_view typed) {
  Value value{};
  const auto faults = read_typed(typed, value);
  return faults.empty() ? "" : faults.front().message;
}

template <class Value> Value value_of(std::string_view typed) {
  Value value{};
  CAPTURE(std::string(typed));
  REQUIRE(read_typed(typed, value).empty());
  return value;
}

}  // namespace

TEST_CASE("a number is read whole or not at all") {
  CHECK(value_of<int>(" 12 ") == 12);
  CHECK(value_of<std::optional<base::Minutes>>("2.5")->value.text() == "2.5");
  CHECK(fault_of<int>("0") == "\"0\" is not a whole number of 1 or more");
  CHECK(fault_of<int>("3x") == "\"3x\" is not a whole number of 1 or more");
  CHECK(fault_of<base::Decimal>("abc") == "\"abc\" is not a number");
  CHECK(fault_of<base::Minutes>("1,5") == "\"1,5\" is not a number");
}

TEST_CASE("what cannot be read leaves the value as it was") {
  std::optional<base::Minutes> minutes = base::Minutes{base::Decimal(3, 0)};
  REQUIRE_FALSE(read_typed("long", minutes).empty());
  CHECK(minutes->value.text() == "3");
}

TEST_CASE("a sum has an amount and a currency, and a whole amount gets two places") {
  CHECK(value_of<base::Money>("40 GBP").amount.text() == "40.00");
  CHECK(value_of<base::Money>("12.5 EUR").amount.text() == "12.50");
  CHECK(fault_of<base::Money>("40") == "\"40\" is not a sum");
  CHECK(fault_of<base::Money>("40 pounds") == "\"40 pounds\" is not a sum");
  CHECK(fault_of<base::Money>("12.345 GBP") == "\"12.345 GBP\" is not a sum");
  CHECK(fault_of<base::Money>("-3 GBP") == "\"-3 GBP\" is not a sum");
}

TEST_CASE("two sums share the currency that is named last") {
  const Sums sums = value_of<Sums>("30 to 40 GBP");
  CHECK(sums.low.amount.text() == "30.00");
  CHECK(sums.low.currency == "GBP");
  REQUIRE(sums.high);
  CHECK(sums.high->amount.text() == "40.00");
  CHECK_FALSE(value_of<Sums>("40 GBP").high);
  CHECK(fault_of<Sums>("30 EUR to 40 GBP") ==
        "\"30 EUR to 40 GBP\" is neither a sum nor two of one currency");
  CHECK(fault_of<Sums>("30 to 40") == "\"30 to 40\" is neither a sum nor two of one currency");
}

TEST_CASE("words may stand behind a label") {
  const auto labelled = value_of<Labelled>("Springs: cover it: slowly");
  CHECK(labelled.label == "Springs");
  CHECK(labelled.words == "cover it: slowly");
  CHECK(value_of<Labelled>("no label here").label.empty());
  CHECK(value_of<Labelled>("a lead of more than twenty-four letters: no").label.empty());
}

TEST_CASE("how far a thing can be undone is a hundred at most") {
  const auto degree = value_of<Degree>("100: Fully.");
  CHECK(degree.degree.value == base::Decimal(100, 0));
  CHECK(degree.words == "Fully.");
  CHECK(value_of<Degree>("0").words == "No.");
  CHECK(value_of<Degree>("fully").words == "Fully.");
  CHECK(value_of<Degree>("Fully: The old one drops in.").words == "The old one drops in.");
  CHECK(value_of<Degree>("fully").degree.value == base::Decimal(100, 0));
  CHECK(value_of<Degree>("mostly: The hole stays.").degree.value == base::Decimal(75, 0));
  CHECK(value_of<Degree>("partly").degree.value == base::Decimal(25, 0));
  CHECK(value_of<Degree>("no: It was cut.").degree.value == base::Decimal(0, 0));
  CHECK(fault_of<Degree>("lots") == "\"lots\" does not say how far it can be undone");
  CHECK_FALSE(fault_of<Degree>("101: Fully.").empty());
  CHECK_FALSE(fault_of<Degree>("-1: No.").empty());
  CHECK_FALSE(fault_of<Degree>("12.5: So so.").empty());
}

TEST_CASE("a word of a closed list is one of its words") {
  CHECK(value_of<record::Certainty>("likely") == record::Certainty::likely);
  CHECK(value_of<std::optional<record::Course>>("make-it-fish") == record::Course::make_it_fish);
  CHECK(fault_of<record::Certainty>("sure") == "\"sure\" is none of its words");
  CHECK(words_of_type<std::optional<record::Certainty>>() ==
        std::vector<std::string>{"certain", "likely", "possible"});
  CHECK(words_of_type<std::string>().empty());
}

TEST_CASE("a measure has its unit and is above zero") {
  using Length = Measured<base::Dimension::length>;
  CHECK(value_of<Length>("1 in").measure.value == doctest::Approx(25.4));
  CHECK(fault_of<Length>("0 mm") == "\"0 mm\" is not above zero");
  CHECK_FALSE(fault_of<Length>("3").empty());
  CHECK_FALSE(fault_of<Length>("3 kg").empty());
}

TEST_CASE("days and dates are those of the calendar") {
  CHECK(value_of<base::Day>("2026-02-28") == base::Day{2026, 2, 28});
  CHECK_FALSE(fault_of<base::Day>("2026-02-29").empty());
  CHECK(value_of<base::EdtfDate>("1948~").text() == "1948~");
  CHECK_FALSE(fault_of<base::EdtfDate>("sometime").empty());
}

}  // namespace winchbook::forms
