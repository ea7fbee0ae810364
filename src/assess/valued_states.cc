#include "assess/valued_states.h"

#include <algorithm>

#include "assess/with_the_reel.h"

namespace winchbook::assess {
namespace {

using value::State;
using value::Trait;

/// The word of an axis as a number; empty while it is open between several.
std::optional<double> told(const condition::WordRange& word) {
  if (word.best != word.worst) return std::nullopt;
  return word.best;
}

/// Tens of points below a hundred, from the middle of a range that is narrow enough to be told.
std::optional<double> tens_lost(const std::optional<base::RatioRange>& original) {
  constexpr std::int64_t kTenPoints = 1000;
  constexpr std::int64_t kSteps = 10000;
  if (!original) return std::nullopt;
  const std::int64_t low = original->low.rounded(kSteps);
  const std::int64_t high = original->high.rounded(kSteps);
  if (high - low > kTenPoints) return std::nullopt;
  return (kSteps - static_cast<double>(low + high) / 2) / kTenPoints;
}

State state_of(const condition::Readings& readings, const std::optional<base::RatioRange>& original,
               bool boxed) {
  State state;
  state[Trait::surface] = told(readings.finish_left.word);
  state[Trait::structure] = told(readings.structure.word);
  state[Trait::working] = told(readings.working.word);
  state[Trait::completeness] = told(readings.completeness.word);
  state[Trait::originality] = tens_lost(original);
  state[Trait::box] = boxed ? 0 : 1;
  return state;
}

}  // namespace

const record::Piece* box_of(const record::Record& record, const knowledge::BoxWords& words) {
  const auto box =
      std::find_if(record.pieces.begin(), record.pieces.end(), [&](const record::Piece& piece) {
        return piece.role == record::PieceRole::content &&
               piece.of_this_reel.answer == record::OfThisReel::yes && is_with_reel(piece) &&
               knowledge::names_box(words, piece.name);
      });
  return box == record.pieces.end() ? nullptr : &*box;
}

std::vector<ValuedState> valued_states(const record::Record& record, const Assessment& assessment,
                                       const knowledge::BoxWords& words) {
  const VisitAssessment* last = assessment.last();
  if (last == nullptr) return {};
  const bool boxed = box_of(record, words) != nullptr;
  const auto& original = last->originality.original;
  return {{ValuedState::Kind::found, state_of(last->condition.found, original.found, boxed)},
          {ValuedState::Kind::left, state_of(last->condition.left, original.left, boxed)}};
}

}  // namespace winchbook::assess
