#include "base/degree_words.h"

#include <doctest/doctest.h>

#include <string>

namespace winchbook::base {
namespace {

std::string word_of(const char* degree) {
  return std::string(degree_word({Decimal::parse(degree).value()}).word);
}

}  // namespace

TEST_CASE("how far a thing can be undone is told in the word whose bounds hold its degree") {
  CHECK(word_of("100") == "fully");
  CHECK(word_of("99.9") == "mostly");
  CHECK(word_of("50") == "mostly");
  CHECK(word_of("49.9") == "partly");
  CHECK(word_of("0.1") == "partly");
  CHECK(word_of("0") == "no");
}

TEST_CASE("a word that was typed is the word that is printed") {
  for (const DegreeWord& one : kDegreeWords)
    CHECK(degree_word({Decimal(one.degree, 0)}).word == one.word);
}

}  // namespace winchbook::base
