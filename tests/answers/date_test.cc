#include "answers/date.h"

#include <doctest/doctest.h>

#include <set>
#include <string>

#include "answers/date_words.h"
#include "answers/lines.h"

using namespace winchbook;
namespace dating = assess::dating;

namespace {

/// Every value up to `last` has its own word.
template <class Enum> void has_words(Enum last) {
  std::set<std::string_view> words;
  for (int i = 0; i <= static_cast<int>(last); ++i) {
    const answers::Term term = answers::term(static_cast<Enum>(i));
    CHECK_FALSE(term.spoken.empty());
    words.insert(term.word);
  }
  CHECK(words.size() == static_cast<std::size_t>(last) + 1);
}

}  // namespace

TEST_CASE("everything that dating answers has its words") {
  has_words(dating::Grounds::statement);
  has_words(dating::Basis::table);
  has_words(dating::Side::not_after);
  has_words(dating::Tier::claim);
  has_words(dating::LeftOut::suspect);
  has_words(dating::EndUse::left_out);
  has_words(dating::Warning::Kind::table);
  has_words(record::EndFirmness::soft);
}

TEST_CASE("lines break at a hundred columns and hang under their lead") {
  const std::string many(40, 'a');
  CHECK(answers::broken_into_lines(many + " " + many + " " + many) ==
        many + " " + many + "\n" + many + "\n");
  CHECK(answers::with_hanging_lead("  1  ", many + " " + many + " " + many) ==
        "  1  " + many + " " + many + "\n     " + many + "\n");
  CHECK(answers::columns_of("“é”") == 3);
}

TEST_CASE("a day is told in words") {
  CHECK(answers::spoken({1940, 1, 2}) == "2 January 1940");
}
