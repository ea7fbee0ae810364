#include "answers/date.h"

#include <doctest/doctest.h>

#include <set>
#include <string>

#include "answers/date_words.h"
#include "answers/told.h"

using namespace winchbook;
namespace dating = assess::dating;

namespace {

/// Every value up to `last` has its own word; with a stem, each word its message.
template <class Enum> void has_words(Enum last, const std::string& stem = {}) {
  const auto catalogue = shared_words("en-GB");
  std::set<std::string_view> words;
  for (int i = 0; i <= static_cast<int>(last); ++i) {
    const answers::Term term = answers::term(static_cast<Enum>(i));
    if (!stem.empty()) CHECK(catalogue.has(stem + std::string(term.word)));
    words.insert(term.word);
  }
  CHECK(words.size() == static_cast<std::size_t>(last) + 1);
}

}  // namespace

TEST_CASE("everything that dating answers has its words") {
  has_words(dating::Grounds::statement, "answer.date.grounds.");
  has_words(dating::Basis::table, "answer.date.basis.");
  has_words(dating::Side::not_after, "answer.");
  has_words(dating::Tier::claim, "answer.date.tier.");
  has_words(dating::LeftOut::suspect);
  has_words(dating::EndUse::left_out);
  has_words(dating::Warning::Kind::table, "answer.date.warning.");
  has_words(record::EndFirmness::soft, "answer.date.firmness.");
}
