#include "answers/grade_words.h"

#include <fmt/format.h>

#include <array>
#include <cstdlib>

namespace winchbook::answers {
namespace {

template <class Enum, std::size_t N> Term at(const std::array<Term, N>& terms, Enum value) {
  return terms.at(static_cast<std::size_t>(value));
}

}  // namespace

// Each table stands in the order of its enumeration; a test walks them.

Term term(assess::originality::Standing standing) {
  static constexpr std::array<Term, 9> kTerms{{
      {"original", "original"},
      {"same-maker", "the maker's, another reel's"},
      {"service-spare", "the maker's spare"},
      {"life", "of its life"},
      {"another-maker", "not the maker's"},
      {"bench", "made at the bench"},
      {"missing", "missing"},
      {"left-empty", "left empty"},
      {"not-determined", "not determined"},
  }};
  return at(kTerms, standing);
}

Term term(assess::originality::Reason reason) {
  static constexpr std::array<Term, 20> kTerms{{
      {"record-born-here", "the record says it was born here"},
      {"record-not-born-here", "the record says it was not born here"},
      {"born-not-determined", "whether it was born here is left open: from nothing to full"},
      {"made-at-bench", "made at a bench, so never born here"},
      {"brought-by-bench", "left open, but a bench brought it: not counted as born here"},
      {"from-donor", "off a donor, so never born here"},
      {"place-empty", "the place was empty"},
      {"place-not-examined", "nobody says whether anything is there: from nothing to full"},
      {"piece-not-described", "something is there that the record does not describe"},
      {"came-loose", "it came loose with the reel and was put back: it counts as found"},
      {"consumable", "a consumable: weighs nothing"},
      {"weight-of-record", "weight written in the record"},
      {"weight-of-parts-list", "weight from the parts list"},
      {"weight-of-unknown-place",
       "the parts list does not know this place: the weight of any other"},
      {"surface-not-examined", "surface not wholly examined"},
      {"surface-perhaps-anothers", "not known to be the maker's surface: from nothing to full"},
      {"loss-measured", "finish came away in the cleaning"},
      {"finished-later", "a later finish lies over the maker's: counted as refinished"},
      {"held-at-found", "written better as left than as found: held at what was found"},
      {"found-at-least-as-left", "as found it was at least what it was as left"},
  }};
  return at(kTerms, reason);
}

Term term(assess::originality::Return::Outcome outcome) {
  static constexpr std::array<Term, 5> kTerms{{
      {"fully", "goes back and leaves no trace"},
      {"in-part", "goes back in part"},
      {"never", "cannot go back"},
      {"not-determined", "not known how far it can go back"},
      {"nothing-there", "nothing was there: nothing to put back"},
  }};
  return at(kTerms, outcome);
}

Term term(assess::originality::Return::Because because) {
  static constexpr std::array<Term, 7> kTerms{{
      {"at-hand", "the old piece is at hand"},
      {"kept-by-bench", "the bench kept it"},
      {"lost", "it is lost"},
      {"scrapped", "it was scrapped"},
      {"whereabouts-not-known", "nobody says where it is"},
      {"degree-nought", "the fitting cannot be undone"},
      {"was-missing", "it was missing when the reel came"},
  }};
  return at(kTerms, because);
}

Term term(assess::condition::AreaBasis basis) {
  static constexpr std::array<Term, 3> kTerms{{
      {"measured", "by the measured areas"},
      {"usual-shares", "by the usual shares of the outside, nothing was measured"},
      {"none", "no area is known"},
  }};
  return at(kTerms, basis);
}

Term term(record::SurfaceState state) {
  static constexpr std::array<Term, 8> kTerms{{
      {"untouched", "untouched"},
      {"cleaned", "cleaned"},
      {"worn-through", "worn through"},
      {"polished", "polished"},
      {"stripped", "stripped"},
      {"repaired", "repaired"},
      {"refinished", "refinished"},
      {"artificially-toned", "artificially toned"},
  }};
  return at(kTerms, state);
}

Term term(record::Severity severity) {
  static constexpr std::array<Term, 3> kTerms{{
      {"blemish", "blemish"},
      {"weakening", "weakens it"},
      {"unsafe", "makes it unsafe"},
  }};
  return at(kTerms, severity);
}

std::string points(base::Ratio share, int places) {
  std::int64_t steps = 100;
  std::int64_t unit = 1;
  for (int i = 0; i < places; ++i) {
    steps *= 10;
    unit *= 10;
  }
  const std::int64_t rounded = share.rounded(steps);
  const std::int64_t size = std::abs(rounded);
  std::string text = fmt::format("{}{}", rounded < 0 ? "-" : "", size / unit);
  if (places > 0) text += fmt::format(".{:0{}}", size % unit, places);
  return text;
}

std::string points(const base::RatioRange& range, int places) {
  const std::string low = points(range.low, places);
  const std::string high = points(range.high, places);
  return low == high ? low : low + " to " + high;
}

}  // namespace winchbook::answers
