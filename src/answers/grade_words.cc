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
      {"original"},
      {"same-maker"},
      {"service-spare"},
      {"life"},
      {"another-maker"},
      {"bench"},
      {"missing"},
      {"left-empty"},
      {"not-determined"},
  }};
  return at(kTerms, standing);
}

Term term(assess::originality::Reason reason) {
  static constexpr std::array<Term, 21> kTerms{{
      {"record-of-this-reel"},
      {"record-not-of-this-reel"},
      {"original-not-determined"},
      {"made-at-bench"},
      {"brought-by-bench"},
      {"from-donor"},
      {"place-empty"},
      {"place-not-examined"},
      {"piece-not-described"},
      {"came-loose"},
      {"consumable"},
      {"weight-of-record"},
      {"weight-of-parts-list"},
      {"weight-of-unknown-place"},
      {"surface-not-examined"},
      {"surface-perhaps-anothers"},
      {"loss-measured"},
      {"finished-later"},
      {"held-at-found"},
      {"no-entry-changed-it"},
      {"found-at-least-as-left"},
  }};
  return at(kTerms, reason);
}

Term term(assess::originality::Return::Outcome outcome) {
  static constexpr std::array<Term, 5> kTerms{{
      {"fully"},
      {"in-part"},
      {"never"},
      {"not-determined"},
      {"nothing-there"},
  }};
  return at(kTerms, outcome);
}

Term term(assess::originality::Return::Because because) {
  static constexpr std::array<Term, 7> kTerms{{
      {"at-hand"},
      {"kept-by-bench"},
      {"lost"},
      {"scrapped"},
      {"whereabouts-not-known"},
      {"degree-nought"},
      {"was-missing"},
  }};
  return at(kTerms, because);
}

Term term(assess::condition::AreaBasis basis) {
  static constexpr std::array<Term, 3> kTerms{{
      {"measured"},
      {"usual-shares"},
      {"none"},
  }};
  return at(kTerms, basis);
}

Term term(record::SurfaceState state) {
  static constexpr std::array<Term, 8> kTerms{{
      {"untouched"},
      {"cleaned"},
      {"worn-through"},
      {"polished"},
      {"stripped"},
      {"repaired"},
      {"refinished"},
      {"darkened-on-purpose"},
  }};
  return at(kTerms, state);
}

Term term(record::Severity severity) {
  static constexpr std::array<Term, 3> kTerms{{
      {"blemish"},
      {"weakening"},
      {"unsafe"},
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
