#include "answers/date_words.h"

#include <fmt/format.h>

#include <array>

namespace winchbook::answers {
namespace {

namespace dating = assess::dating;

template <class Enum, std::size_t N> Term at(const std::array<Term, N>& terms, Enum value) {
  return terms.at(static_cast<std::size_t>(value));
}

}  // namespace

// Each table stands in the order of its enumeration; a test walks them.

Term term(dating::Grounds grounds) {
  static constexpr std::array<Term, 8> kTerms{{
      {"mark"},
      {"claim"},
      {"material"},
      {"finish"},
      {"fastener"},
      {"feature"},
      {"making"},
      {"statement"},
  }};
  return at(kTerms, grounds);
}

Term term(dating::Basis basis) {
  static constexpr std::array<Term, 2> kTerms{{
      {"bench"},
      {"table"},
  }};
  return at(kTerms, basis);
}

Term term(dating::Side side) {
  static constexpr std::array<Term, 2> kTerms{{
      {"not-before"},
      {"not-after"},
  }};
  return at(kTerms, side);
}

Term term(dating::Tier tier) {
  static constexpr std::array<Term, 3> kTerms{{
      {"hard"},
      {"custom"},
      {"claim"},
  }};
  return at(kTerms, tier);
}

Term term(dating::LeftOut reason) {
  static constexpr std::array<Term, 10> kTerms{{
      {"no"},
      {"not-of-this-reel"},
      {"made-at-bench"},
      {"put-in-by-bench"},
      {"from-donor"},
      {"content"},
      {"not-legible"},
      {"crossed"},
      {"after-arrival"},
      {"suspect"},
  }};
  return at(kTerms, reason);
}

Term term(dating::EndUse use) {
  static constexpr std::array<Term, 6> kTerms{{
      {"none"},
      {"counts"},
      {"gives-way"},
      {"set-aside"},
      {"undecided"},
      {"left-out"},
  }};
  return at(kTerms, use);
}

Term term(dating::Warning::Kind kind) {
  static constexpr std::array<Term, 11> kTerms{{
      {"crossed-ends", "it ends before it begins; left out"},
      {"made-soft-in-part", "read only in part, so its hard end is taken as soft"},
      {"made-soft-uncertain",
       "the date of its hard end is not sure to the day, so it is taken as soft"},
      {"end-without-day", "its date has no day on that side, so it binds nothing there"},
      {"bench-against-table",
       "the bench reads it otherwise than the tables allow; the bench's reading was used"},
      {"after-arrival",
       "it says not before a day on which the reel lay on the bench already; left out"},
      {"soft-gives-way", "firmer ends say otherwise, so it gives way"},
      {"written-outside",
       "the year that the record gives the reel lies outside what its marks allow"},
      {"nothing-settles", "nothing here says which of the pieces does not belong"},
      {"too-wide", "over so many years no likelihood was reckoned"},
      {"table", "the tables say"},
  }};
  return at(kTerms, kind);
}

Term term(record::EndFirmness firmness) {
  static constexpr std::array<Term, 2> kTerms{{
      {"hard"},
      {"soft"},
  }};
  return at(kTerms, firmness);
}

std::string as_read(const record::Marking& mark, const words::Catalogue& words) {
  const std::string* text = record::told(mark.text);
  if (text == nullptr) return words.say("answer.date.withheld");
  std::string line;
  for (const char c : *text)
    line += c == '\n' ? std::string(" / ") : std::string(1, c);
  return words.say("answer.date.quoted", {{"text", line}});
}

std::string piece_name(const record::Record& record, const record::PieceId& id,
                       const words::Catalogue& words) {
  const record::Piece* piece = find(record, id);
  return piece == nullptr ? words.say("answer.date.the-reel") : piece->name;
}

std::string speaker(const record::Record& record, const dating::Evidence& evidence,
                    const words::Catalogue& words) {
  const auto of = [&](const std::string& what) {
    return words.say("answer.date.on",
                     {{"what", what}, {"piece", piece_name(record, evidence.piece, words)}});
  };
  if (evidence.marking) {
    if (const record::Marking* mark = find(record, *evidence.marking))
      return of(as_read(*mark, words));
  }
  if (evidence.custody) return words.say("answer.date.custody");
  if (!evidence.what.empty()) return of(evidence.what);
  return of(words.say(fmt::format("answer.date.grounds.{}", term(evidence.grounds).word)));
}

}  // namespace winchbook::answers
