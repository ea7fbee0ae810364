#include "base/words_of_text.h"

#include <doctest/doctest.h>

using namespace winchbook::base;  // NOLINT
using Parts = std::vector<std::string_view>;

TEST_CASE("blanks around a text are taken off, those inside it stay") {
  CHECK(trimmed(" \t red  fibre\r\n") == "red  fibre");
  CHECK(trimmed("cork") == "cork");
  CHECK(trimmed(" \n\t").empty());
  CHECK(trimmed("").empty());
}

TEST_CASE("a text has one part more than separators") {
  CHECK(parts_of("a,b", ',') == Parts{"a", "b"});
  CHECK(parts_of("", ',') == Parts{""});
  CHECK(parts_of(",a,,b ,", ',') == Parts{"", "a", "", "b ", ""});
}

TEST_CASE("words are kept apart by any number of blanks") {
  CHECK(words_of("  to-gear 7.4\t23.6\n0.9 ") == Parts{"to-gear", "7.4", "23.6", "0.9"});
  CHECK(words_of("one") == Parts{"one"});
  CHECK(words_of(" \n").empty());
}

TEST_CASE("small letters and capitals are those of ASCII") {
  CHECK(in_small_letters("Nickel SILVER [Ä] @Z") == "nickel silver [Ä] @z");
  CHECK(in_capitals("nickel silver {ä} `z") == "NICKEL SILVER {ä} `Z");
}

TEST_CASE("a text on one line has one space between its words") {
  CHECK(on_one_line(" red \n\t fibre ") == "red fibre");
  CHECK(on_one_line(" \n").empty());
}

TEST_CASE("plain words are what signs keep apart, in small letters") {
  using Words = std::vector<std::string>;
  CHECK(plain_words_of("Tail-plate, No. 30 (Ä)") == Words{"tail", "plate", "no", "30", "Ä"});
  CHECK(plain_words_of("...").empty());
  CHECK(plain_words_of("").empty());
}

TEST_CASE("capitals are those of A to Z, and one at least") {
  CHECK(is_capitals("GBP"));
  CHECK_FALSE(is_capitals("Gbp"));
  CHECK_FALSE(is_capitals("G P"));
  CHECK_FALSE(is_capitals(""));
}
