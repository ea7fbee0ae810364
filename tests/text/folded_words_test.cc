#include "text/folded_words.h"

#include <doctest/doctest.h>

#include <string>

using winchbook::text::folded_words;

namespace {

/// The folded words with a stroke between, a capital marked by ^ and a sentence's first word by >.
std::string said(std::string_view text) {
  std::string out;
  for (const auto& word : folded_words(text)) {
    if (!out.empty()) out += '|';
    if (word.opens_sentence) out += '>';
    if (word.capital) out += '^';
    out += word.folded;
  }
  return out;
}

}  // namespace

TEST_CASE("a word is the same in any case, form and with what does not show in it") {
  CHECK(said("MERROW") == ">^merrow");
  CHECK(said("nell's T.V.") == ">nell|s|^t|^v");
  // é as one sign, and as e with its accent (Unicode: U+00E9, U+0065 U+0301)
  CHECK(said("Ren\u00E9e") == said("Rene\u0301e"));
  // case folding (CaseFolding.txt): ß is ss
  CHECK(said("STRASSE") == said("Stra\u00DFe"));
  // a soft hyphen and a zero-width joiner do not show
  CHECK(said("Mer\u00ADrow") == ">^merrow");
  CHECK(said("Mer\u200Drow") == ">^merrow");
  // full-width letters are compatible with the plain ones (NFKC)
  CHECK(said("\uFF27\uFF55\uFF53") == ">^gus");
}

TEST_CASE("words know where they stand and whether they open a sentence") {
  const auto words = folded_words("a \u00C6r\u00F8 b");
  REQUIRE(words.size() == 3);
  CHECK(words[1].begin == 2);
  CHECK(words[1].end == 7);
  CHECK(said("It rose. \u201CRose said so: Rose, rose\nRose") ==
        ">^it|rose|>^rose|said|so|>^rose|rose|>^rose");
  CHECK(said("the (Rose)") == ">the|^rose");
  CHECK(said("").empty());
}

TEST_CASE("bytes that are not UTF-8 part words and harm nothing") {
  CHECK(said("ab\xFF"
             "cd") == ">ab|cd");
  CHECK(said("\xE2\x82") == "");
}
