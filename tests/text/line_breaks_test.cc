#include <doctest/doctest.h>

#include <cstdint>
#include <sstream>
#include <string>
#include <string_view>
#include <vector>

#include "text/shape.h"

namespace winchbook::text {
namespace {

void append_utf8(std::string& out, std::uint32_t character) {
  if (character < 0x80) {
    out += static_cast<char>(character);
  } else if (character < 0x800) {
    out += static_cast<char>(0xC0U | character >> 6U);
    out += static_cast<char>(0x80U | (character & 0x3FU));
  } else if (character < 0x10000) {
    out += static_cast<char>(0xE0U | character >> 12U);
    out += static_cast<char>(0x80U | (character >> 6U & 0x3FU));
    out += static_cast<char>(0x80U | (character & 0x3FU));
  } else {
    out += static_cast<char>(0xF0U | character >> 18U);
    out += static_cast<char>(0x80U | (character >> 12U & 0x3FU));
    out += static_cast<char>(0x80U | (character >> 6U & 0x3FU));
    out += static_cast<char>(0x80U | (character & 0x3FU));
  }
}

/// A row of the Unicode test file: "× 0061 × 0020 ÷ 0062 ÷".
struct Row {
  explicit Row(const std::string& row) {
    std::istringstream words(row);
    for (std::string word; words >> word;) {
      if (word == "÷") {
        ends.push_back(static_cast<std::uint32_t>(text.size()));
      } else if (word != "×") {
        append_utf8(text, static_cast<std::uint32_t>(std::stoul(word, nullptr, 16)));
      }
    }
  }
  std::string text;
  std::vector<std::uint32_t> ends;
};

std::vector<std::uint32_t> offsets(std::string_view text, std::string_view language = "en-GB") {
  std::vector<std::uint32_t> out;
  for (const BreakOpportunity& opportunity : line_breaks(text, language)) {
    out.push_back(opportunity.offset);
  }
  return out;
}

// Rows of LineBreakTest-15.0.0.txt (Unicode, 2022-02-26), the version of the ICU used here.
constexpr const char* kLineBreakRows[] = {
    "× 2014 ÷ 0023 ÷",
    "× 2014 × 0020 ÷ 0023 ÷",
    "× 2014 × 2014 ÷",
    "× 2014 × 00A0 ÷",
    "× 2014 × 002F ÷",
    "× 00A0 × 0030 ÷",
    "× 00A0 × 0020 ÷ 0030 ÷",
    "× 002D × 0030 ÷",
    "× 000A ÷ 0023 ÷",
    "× 002F ÷ 0023 ÷",
    "× 0030 × 002F ÷",
    "× 0030 × 0025 ÷",
    "× 0067 × 0069 × 0076 × 0065 × 0020 ÷ 0062 × 006F × 006F × 006B × 0028 × 0073 × 0029 × 002E ÷",
    "× 0028 × 0063 × 006F × 006E × 00AD × 0029 × 006C × 0061 × 006E × 0067 ÷",
    "× 0028 × 0063 × 006F × 006E × 0029 × 00AD ÷ 006C × 0061 × 006E × 0067 ÷",
    "× 0028 × 0063 × 006F × 006E × 0029 × 2011 × 006C × 0061 × 006E × 0067 ÷",
    "× 0063 × 0072 × 0065 × 0301 × 0028 × 0065 × 0301 × 0029 ÷ 0028 × 0065 × 0029 ÷",
    "× 0061 × 0020 × 0020 × 200B ÷ 0062 ÷",
    "× 5F8C × 2026 ÷ 306B ÷",
    "× 30A4 ÷ 30B8 × 30FC × 30FB ÷ 30C9 × 30C3 ÷ 30B0 × 3001 ÷ 548C ÷",
    "× 308C ÷ 308B × 3002 ÷ 0071 × 0075 ÷",
    "× 1F1F7 × 1F1FA ÷ 1F1F8 ÷",
    "× 305B × FF01 ÷ 0031 × 0030 × 0030 × 0025 ÷ 306E ÷ 5B8C ÷",
};

TEST_CASE("lines break where the Unicode line breaking test says") {
  for (const std::string text : kLineBreakRows) {
    CAPTURE(text);
    const Row row(text);
    CHECK(offsets(row.text) == row.ends);
  }
}

// Rows of GraphemeBreakTest-15.0.0.txt.
constexpr const char* kCharacterRows[] = {
    "÷ AC01 × 11A8 ÷ 1100 ÷",
    "÷ 1F1E6 × 1F1E7 ÷ 1F1E8 ÷ 0062 ÷",
    "÷ 0061 ÷ 1F1E6 × 1F1E7 ÷ 1F1E8 ÷ 0062 ÷",
    "÷ 0061 ÷ 1F1E6 × 1F1E7 × 200D ÷ 1F1E8 ÷ 0062 ÷",
    "÷ 0061 ÷ 1F1E6 × 200D ÷ 1F1E7 × 1F1E8 ÷ 0062 ÷",
    "÷ 0061 ÷ 1F1E6 × 1F1E7 ÷ 1F1E8 × 1F1E9 ÷ 0062 ÷",
    "÷ 0061 × 200D ÷",
    "÷ 0061 × 0308 ÷ 0062 ÷",
    "÷ 0061 × 0903 ÷ 0062 ÷",
    "÷ 0061 ÷ 0600 × 0062 ÷",
    "÷ 1F476 × 1F3FF ÷ 1F476 ÷",
    "÷ 0061 × 1F3FF ÷ 1F476 ÷",
    "÷ 0061 × 1F3FF ÷ 1F476 × 200D × 1F6D1 ÷",
    "÷ 1F476 × 1F3FF × 0308 × 200D × 1F476 × 1F3FF ÷",
    "÷ 1F6D1 × 200D × 1F6D1 ÷",
    "÷ 0061 × 200D ÷ 1F6D1 ÷",
    "÷ 2701 × 200D × 2701 ÷",
    "÷ 0061 × 200D ÷ 2701 ÷",
};

TEST_CASE("characters end where the Unicode grapheme test says") {
  for (const std::string text : kCharacterRows) {
    CAPTURE(text);
    Row row(text);
    row.ends.erase(row.ends.begin());  // the mark before the first character
    CHECK(character_ends(row.text, "en-GB") == row.ends);
  }
}

// ICU takes numbers whole (UAX #14, 8.2, example 7) and keeps a leading hyphen with its word (ICU's
// line.txt, LB 20.09), where the plain rules of the test file would break.
TEST_CASE("numbers and leading hyphens stay whole") {
  CHECK(offsets("equals .35 cents") == std::vector<std::uint32_t>{7, 11, 16});
  CHECK(offsets("12.50") == std::vector<std::uint32_t>{5});
  CHECK(offsets("£1,234.50") == std::vector<std::uint32_t>{10});
  CHECK(offsets("the -er") == std::vector<std::uint32_t>{4, 7});
}

TEST_CASE("a figure stays with its unit over a no-break space") {
  CHECK(offsets("9\u00A0mm long") == std::vector<std::uint32_t>{6, 10});
}

TEST_CASE("a soft hyphen asks for a hyphen only where the line ends at it") {
  const auto breaks = line_breaks("co\u00ADoperate now", "en-GB");
  REQUIRE(breaks.size() == 3);
  CHECK(breaks[0].offset == 4);
  CHECK(breaks[0].hyphen);
  CHECK(breaks[1].offset == 12);
  CHECK_FALSE(breaks[1].hyphen);
  CHECK_FALSE(breaks[2].hyphen);
}

TEST_CASE("a hyphen that stands there asks for no other") {
  const auto breaks = line_breaks("star-drag", "en-GB");
  REQUIRE(breaks.size() == 2);
  CHECK(breaks[0].offset == 5);
  CHECK_FALSE(breaks[0].hyphen);
}

TEST_CASE("a line feed must end the line, the end of the text need not") {
  const auto breaks = line_breaks("one\ntwo", "en-GB");
  REQUIRE(breaks.size() == 2);
  CHECK(breaks[0].offset == 4);
  CHECK(breaks[0].mandatory);
  CHECK(breaks[1].offset == 7);
  CHECK_FALSE(breaks[1].mandatory);
}

TEST_CASE("languages can take turns") {
  CHECK(offsets("a b", "en-GB") == std::vector<std::uint32_t>{2, 3});
  CHECK(offsets("修理", "ja") == std::vector<std::uint32_t>{3, 6});
  CHECK(offsets("a b", "en-GB") == std::vector<std::uint32_t>{2, 3});
}

// The Unicode Standard, SpecialCasing.txt: sharp s grows, Turkish has a dotted capital I.
TEST_CASE("upper case follows the language") {
  CHECK(upper_case("Straße", "de") == "STRASSE");
  CHECK(upper_case("fitting", "en-GB") == "FITTING");
  CHECK(upper_case("fitting", "tr") == "FİTTİNG");
  CHECK(upper_case("ΐ", "en-GB") == "\u0399\u0308\u0301");
  CHECK(upper_case("ΐ", "el") == "Ϊ");  // Greek capitals drop the accent
  CHECK(upper_case("", "en-GB").empty());
}

}  // namespace
}  // namespace winchbook::text
