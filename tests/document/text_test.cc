#include "document/text.h"

#include <doctest/doctest.h>

using namespace winchbook::document;  // NOLINT

TEST_CASE("words that hold line feeds stand in as many lines") {
  const Text text = in_lines("MADE IN\n\nU.S.A.");
  REQUIRE(text.parts.size() == 4);
  CHECK(std::get<Run>(text.parts[0]).text == "MADE IN");
  CHECK(std::holds_alternative<LineEnd>(text.parts[1]));
  CHECK(std::holds_alternative<LineEnd>(text.parts[2]));
  CHECK(std::get<Run>(text.parts[3]).text == "U.S.A.");
  CHECK(in_lines("one").parts.size() == 1);
  CHECK(in_lines("").empty());
}

TEST_CASE("a text put after another keeps both") {
  Text text = plain("The knob");
  append(text, in_lines(" is\nteak"));
  CHECK(text.parts.size() == 4);
}
