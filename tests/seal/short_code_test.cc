#include "seal/short_code.h"

#include <doctest/doctest.h>

#include <stdexcept>
#include <string>
#include <utility>

namespace winchbook::seal {
namespace {

constexpr std::string_view kSymbols = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

Sealed sealed() {
  return {fingerprint("abc"), "keepsake", "2", "2026-06-19"};
}

TEST_CASE("a code is the first 55 bits of the sealed line's SHA-256") {
  // Made apart from this program:
  //   printf 'ba7816bf…15ad\nkeepsake\n2\n2026-06-19\n' | sha256sum
  // gives 838572b74f7580…; its first 55 bits in fives are written out below.
  CHECK(short_code(sealed()).substr(0, 11) == "GE2Q5DTFEP0");
}

TEST_CASE("document, edition, date and record each change the code") {
  const std::string code = short_code(sealed());
  Sealed other = sealed();
  other.document = "collector statement";
  CHECK(short_code(other) != code);
  other = sealed();
  other.edition = "3";
  CHECK(short_code(other) != code);
  other = sealed();
  other.date = "2026-06-20";
  CHECK(short_code(other) != code);
  other = sealed();
  other.fingerprint = fingerprint("abd");
  CHECK(short_code(other) != code);
}

TEST_CASE("fields cannot run into each other") {
  Sealed other = sealed();
  other.document = "keepsake\n2";
  CHECK_THROWS_AS((void)short_code(other), std::invalid_argument);
}

TEST_CASE("every single wrong character is noticed") {
  const std::string code = short_code(sealed());
  REQUIRE(read_short_code(code));
  for (std::size_t place = 0; place < code.size(); ++place) {
    for (const char symbol : kSymbols) {
      if (symbol == code[place]) continue;
      std::string wrong = code;
      wrong[place] = symbol;
      CAPTURE(wrong);
      CHECK_FALSE(read_short_code(wrong));
    }
  }
}

TEST_CASE("every exchange of two characters is noticed") {
  const std::string code = short_code(sealed());
  for (std::size_t i = 0; i < code.size(); ++i) {
    for (std::size_t j = i + 1; j < code.size(); ++j) {
      if (code[i] == code[j]) continue;
      std::string wrong = code;
      std::swap(wrong[i], wrong[j]);
      CAPTURE(wrong);
      CHECK_FALSE(read_short_code(wrong));
    }
  }
}

// Crockford, "Base 32" (crockford.com/base32.html): I and L are read as 1, O as 0, U is left out,
// lower case is accepted, hyphens are ignored.
TEST_CASE("a code is read as people type it") {
  const std::string zero(12, '0');
  CHECK(read_short_code("oooo-OOOO-0000").value() == zero);
  const std::string code = short_code(sealed());
  std::string lower = grouped(code);
  for (char& c : lower) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    if (c == '1') c = 'l';
    if (c == '0') c = 'o';
  }
  CHECK(read_short_code(lower).value() == code);
  CHECK(read_short_code(" " + grouped(code) + " ").value() == code);
}

TEST_CASE("a code that cannot be read says why") {
  CHECK(read_short_code("7K2M").faults().front().message ==
        "seal code \"7K2M\" has 4 characters, expected 12");
  CHECK(read_short_code("UUUU-UUUU-UUUU").faults().front().message ==
        "seal code \"UUUU-UUUU-UUUU\" holds a character that seal codes do not have, expected "
        "digits and letters without U");
  CHECK(read_short_code("0000-0000-0001").faults().front().message ==
        "seal code \"0000-0000-0001\" is misread: its check character does not fit");
  CHECK(read_short_code("0000-0000-0001").faults().front().rule == "seal-code");
}

TEST_CASE("a tag's code is seven characters of the digest and one that checks them") {
  // printf 'reel\n9be04c7d2f6a41183c95d0e7ab62f814\n' | sha256sum begins c4c8e09d37, in fives 24 19
  // 4 14 1 7 9, in base 32 RK4E179; the eighth was reckoned apart, by the sum in the header.
  const std::string code = tag_code("reel\n9be04c7d2f6a41183c95d0e7ab62f814\n");
  CHECK(code == "RK4E179G");
  CHECK(grouped(code) == "RK4E-179G");
  CHECK(tag_code("reel\n9be04c7d2f6a41183c95d0e7ab62f815\n") != code);
}

TEST_CASE("codes are printed in three groups of four") {
  CHECK(grouped("0123456789AB") == "0123-4567-89AB");
}

}  // namespace
}  // namespace winchbook::seal
