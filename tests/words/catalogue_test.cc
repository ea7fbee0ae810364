#include "words/catalogue.h"

#include <doctest/doctest.h>

#include <stdexcept>
#include <string>

using winchbook::base::Decimal;
using winchbook::base::EdtfDate;
using winchbook::base::Money;
using winchbook::words::Catalogue;

namespace {

Catalogue british() {
  return {"en-GB",
          {{"parts", "{count, plural, one {# part} other {# parts}} of {whose}"},
           {"date.pattern.day", "d\u00a0MMMM y"},
           {"date.pattern.day.without-year", "d\u00a0MMMM"},
           {"date.pattern.month", "MMMM y"},
           {"date.about", "about {date}"},
           {"date.between", "between {first} and {last}"},
           {"date.span", "{first} to {last}"},
           {"date.since", "since {first}"},
           {"date.unknown", "date not known"},
           {"date.one-of", "one of {first} to {last}"},
           {"join.comma", "{before}, {next}"},
           {"unit.mm", "mm"}}};
}

std::string told(const Catalogue& words, const char* date) {
  return words.date(EdtfDate::parse(date).value());
}

/// No-break spaces as "~", so that a test shows them.
std::string visible(std::string text) {
  for (const std::string space : {"\u00a0", "\u202f"}) {
    for (auto at = text.find(space); at != std::string::npos; at = text.find(space)) {
      text.replace(at, space.size(), 1, '~');
    }
  }
  return text;
}

}  // namespace

// Plural categories of English, one and other: Unicode CLDR, plural rules chart.
TEST_CASE("a message counts as its language does") {
  const Catalogue words = british();
  CHECK(words.say("parts", {{"count", 1}, {"whose", "the maker"}}) == "1 part of the maker");
  CHECK(words.say("parts", {{"count", 0}, {"whose", "the maker"}}) == "0 parts of the maker");
  CHECK(words.say("parts", {{"count", 1200}, {"whose", "Gus"}}) == "1,200 parts of Gus");
}

TEST_CASE("words set into a message are never read as a pattern") {
  CHECK(british().say("parts", {{"count", 2}, {"whose", "{count} o'clock"}}) ==
        "2 parts of {count} o'clock");
}

TEST_CASE("a message that is not there is a fault of the program") {
  CHECK_THROWS_AS(static_cast<void>(british().say("no.such")), std::out_of_range);
}

TEST_CASE("a pattern that cannot be read is told by its key") {
  const Catalogue words{"en-GB", {{"good", "{name} is here"}, {"bad", "{name is here"}}};
  const auto faults = words.faults();
  REQUIRE(faults.size() == 1);
  CHECK(faults.front().message.find("\"bad\"") != std::string::npos);
  CHECK(faults.front().rule == "message-pattern");
}

TEST_CASE("a template's own words take a message's place") {
  Catalogue words = british();
  words.reword("parts", "all of it");
  CHECK(words.say("parts") == "all of it");
}

TEST_CASE("dates are told as precisely as they are known") {
  const Catalogue words = british();
  CHECK(visible(told(words, "2026-03-03")) == "3~March 2026");
  CHECK(visible(told(words, "1962-08")) == "August 1962");
  CHECK(told(words, "1948") == "1948");
  CHECK(told(words, "1994~") == "about 1994");
  CHECK(told(words, "1948/1979") == "1948 to 1979");
}

TEST_CASE("a measure never parts from its unit") {
  CHECK(visible(british().measure(Decimal::parse("98.4").value(), "mm")) == "98.4~mm");
}

// Symbols and grouping of English: Unicode CLDR, locales en-GB and en-US.
TEST_CASE("numbers and money keep their places and take the language's marks") {
  const Catalogue words = british();
  CHECK(words.number(Decimal::parse("1234.50").value()) == "1,234.50");
  CHECK(words.money(Money{Decimal::parse("12.50").value(), "GBP"}) == "£12.50");
  const Catalogue american{"en-US", {}};
  CHECK(american.money(Money{Decimal::parse("12.50").value(), "USD"}) == "$12.50");
  CHECK(american.money(Money{Decimal::parse("12.50").value(), "GBP"}) == "£12.50");
}

// The serial comma is American: Unicode CLDR, list patterns of en-GB and en-US.
TEST_CASE("a list is joined as its language joins it") {
  CHECK(british().list({"a", "b", "c"}) == "a, b and c");
  CHECK(Catalogue("en-US", {}).list({"a", "b", "c"}) == "a, b, and c");
  CHECK(british().list({"a"}) == "a");
  CHECK(british().list({}).empty());
}

TEST_CASE("what follows one behind the other is joined by a message, without what is empty") {
  CHECK(british().joined("join.comma", {"brass", "", "5 min"}) == "brass, 5 min");
  CHECK(british().joined("join.comma", {"brass"}) == "brass");
  CHECK(british().joined("join.comma", {"", ""}).empty());
}

TEST_CASE("numbers are spelled out, and begin a sentence when asked") {
  CHECK(british().spelled(21) == "twenty-one");
  CHECK(british().spelled(51, true) == "Fifty-one");
  CHECK(british().capitalised("écrou") == "Écrou");
}
