#include "pdf/syntax.h"

#include <doctest/doctest.h>

#include <cstdint>
#include <string>
#include <string_view>

namespace winchbook::pdf {
namespace {

std::string thousandths(std::int64_t value) {
  std::string out;
  append_thousandths(out, value);
  return out;
}

std::string text(std::string_view utf8) {
  std::string out;
  append_text(out, utf8);
  return out;
}

TEST_CASE("numbers have three decimals at most and no needless zeros") {
  CHECK(thousandths(0) == "0");
  CHECK(thousandths(12'000) == "12");
  CHECK(thousandths(-500) == "-.5");
  CHECK(thousandths(1'050) == "1.05");
  CHECK(thousandths(7) == ".007");
  CHECK(thousandths(-841'890) == "-841.89");
}

TEST_CASE("halves round away from zero") {
  CHECK(rounded_quotient(5, 10) == 1);
  CHECK(rounded_quotient(-5, 10) == -1);
  CHECK(rounded_quotient(4, 10) == 0);
  CHECK(rounded_quotient(-14, 10) == -1);
}

// ISO 32000-1, 7.3.4.2 (literal strings) and 7.9.2.2 (text strings: UTF-16BE with byte order mark).
TEST_CASE("plain text is a literal string, other text is UTF-16") {
  CHECK(text("a (b) \\") == "(a \\(b\\) \\\\)");
  CHECK(text("é") == "<FEFF00E9>");
  CHECK(text("") == "()");
  CHECK(text("a\nb") == "<FEFF0061000A0062>");
}

// RFC 2781, 2.1: U+10000 is D800 DC00, U+10FFFF is DBFF DFFF.
TEST_CASE("characters beyond the first plane are surrogate pairs") {
  CHECK(text("\U00010000") == "<FEFFD800DC00>");
  CHECK(text("\U0010FFFF") == "<FEFFDBFFDFFF>");
}

TEST_CASE("bytes that are no UTF-8 become the replacement character") {
  CHECK(text("a\xFFz") == "<FEFF0061FFFD007A>");
  CHECK(text("\xC3") == "<FEFFFFFD>");
  CHECK(text("\xC0\x80") == "<FEFFFFFDFFFD>");
}

// ISO 32000-1, 7.3.5: other than regular characters are written #xx.
TEST_CASE("names escape what would end them") {
  std::string out;
  append_name(out, "text/xml A#");
  CHECK(out == "/text#2Fxml#20A#23");
}

// ISO 32000-1, 7.3.4.2: an unescaped carriage return would be read as a line feed.
TEST_CASE("string bytes are escaped where they have to be") {
  std::string out;
  for (const unsigned byte : {0U, 13U, 40U, 41U, 92U, 65U})
    append_string_byte(out, byte);
  CHECK(out == std::string("\0\\r\\(\\)\\\\A", 10));
}

}  // namespace
}  // namespace winchbook::pdf
