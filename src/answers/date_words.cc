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
      {"mark", "a mark"},
      {"claim", "a date that somebody put on it"},
      {"material", "what it is made of"},
      {"finish", "its finish"},
      {"fastener", "its fastener"},
      {"feature", "a form of the maker's"},
      {"making", "when the record says the piece was made"},
      {"statement", "what was told, or is written"},
  }};
  return at(kTerms, grounds);
}

Term term(dating::Basis basis) {
  static constexpr std::array<Term, 2> kTerms{{
      {"bench", "by the bench's own reading"},
      {"table", "by the tables"},
  }};
  return at(kTerms, basis);
}

Term term(dating::Side side) {
  static constexpr std::array<Term, 2> kTerms{{
      {"not-before", "not before"},
      {"not-after", "not after"},
  }};
  return at(kTerms, side);
}

Term term(dating::Tier tier) {
  static constexpr std::array<Term, 3> kTerms{{
      {"hard", "hard ends"},
      {"custom", "soft ends"},
      {"claim", "dates that were put on it or told"},
  }};
  return at(kTerms, tier);
}

Term term(dating::LeftOut reason) {
  static constexpr std::array<Term, 10> kTerms{{
      {"no", "it counts"},
      {"not-born-here", "the record says that the piece was not born on this reel"},
      {"made-at-bench", "the piece was made at a bench"},
      {"put-in-by-bench", "the piece came with a bench"},
      {"from-donor", "the piece came off another reel"},
      {"content", "it came with the reel and is no part of it"},
      {"not-legible", "it cannot be read"},
      {"crossed", "its own ends exclude each other"},
      {"after-arrival", "the reel lay on the bench before the day it names"},
      {"suspect", "its piece does not fit the rest"},
  }};
  return at(kTerms, reason);
}

Term term(dating::EndUse use) {
  static constexpr std::array<Term, 6> kTerms{{
      {"none", "no such end"},
      {"counts", "counts"},
      {"gives-way", "gives way to firmer ends"},
      {"set-aside", "set aside, so that most pieces agree"},
      {"undecided", "undecided"},
      {"left-out", "left out"},
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
      {"hard", "hard: law, physics or a printed date"},
      {"soft", "soft: custom, which makers and owners were free to break"},
  }};
  return at(kTerms, firmness);
}

std::string spoken(const base::Day& day) {
  static constexpr std::array kMonths{"January",   "February", "March",    "April",
                                      "May",       "June",     "July",     "August",
                                      "September", "October",  "November", "December"};
  return fmt::format("{} {} {}", day.day, kMonths.at(static_cast<std::size_t>(day.month - 1)),
                     day.year);
}

std::string as_read(const record::Marking& mark) {
  const std::string* text = record::told(mark.text);
  if (text == nullptr) return "an inscription, withheld";
  std::string line;
  for (const char c : *text)
    line += c == '\n' ? std::string(" / ") : std::string(1, c);
  return "“" + line + "”";
}

std::string piece_name(const record::Record& record, const record::PieceId& id) {
  const record::Piece* piece = find(record, id);
  return piece == nullptr ? "The reel" : piece->name;
}

std::string speaker(const record::Record& record, const dating::Evidence& evidence) {
  const std::string piece = piece_name(record, evidence.piece);
  if (evidence.marking) {
    if (const record::Marking* mark = find(record, *evidence.marking))
      return fmt::format("{} ({})", as_read(*mark), piece);
  }
  if (evidence.custody) {
    return "whoever had it first, had it by then";
  }
  if (evidence.what.empty()) return fmt::format("{} ({})", term(evidence.grounds).spoken, piece);
  return fmt::format("{} ({})", evidence.what, piece);
}

}  // namespace winchbook::answers
