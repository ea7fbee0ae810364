#include "answers/value_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "knowledge/courses.h"

namespace winchbook::answers {
namespace {

using assess::value::Excluded;
using assess::value::Note;
using assess::value::State;
using assess::value::Trait;
using record::Course;

template <class Value, std::size_t count>
std::string_view said(const std::array<base::EnumWord<Value>, count>& all, Value value) {
  for (const auto& one : all) {
    if (one.value == value) return one.word;
  }
  return {};
}

}  // namespace

std::string_view spoken(Excluded value) {
  static constexpr auto kSaid = std::to_array<base::EnumWord<Excluded>>({
      {Excluded::by_bench, "left out by the bench"},
      {Excluded::asked, "asked, not paid"},
      {Excluded::after, "later than the day the value is for"},
      {Excluded::undated, "its date says too little"},
      {Excluded::twice, "the same sale is recorded already"},
      {Excluded::dealer, "a dealer's price is not what an owner is paid"},
      {Excluded::premium_unknown, "what the buyer paid on top of the hammer price is not recorded"},
      {Excluded::no_rate, "no exchange rate is known for its year"},
      {Excluded::no_index, "it lies before the price index begins"},
      {Excluded::outlier, "far from all the others: look at it again"},
  });
  return said(kSaid, value);
}

std::string_view spoken(Note value) {
  static constexpr auto kSaid = std::to_array<base::EnumWord<Note>>({
      {Note::too_few, "there are too few sales: no figure is given"},
      {Note::too_few_to_fit, "there are too few sales to fit prices to traits"},
      {Note::alike, "all sales are alike in a trait in which this reel differs from them"},
      {Note::seldom_told, "too few sales tell a trait for the fit: it was left out"},
      {Note::partly_told, "sales that do not tell every trait were left out of the fit"},
      {Note::far_beyond, "that is too far beyond the sales: no figure is given"},
      {Note::apart, "the sales lie too far apart: no figure is given"},
      {Note::change_not_told, "no sale tells what would change: no figure is given"},
      {Note::collinear,
       "in these sales the traits follow from each other and cannot be told apart"},
      {Note::beyond, "this reel lies beyond all the sales in a trait"},
      {Note::silent_sales, "no sale tells these, so nothing was adjusted for them"},
      {Note::not_told, "a trait of this reel is not determined and was not adjusted"},
      {Note::no_index, "there is no price index of this currency: prices stand as they were paid"},
      {Note::estimated_index,
       "a figure of the price index is missing and was estimated by its rule"},
  });
  return said(kSaid, value);
}

std::string_view spoken(Course value) {
  static constexpr auto kSaid = std::to_array<base::EnumWord<Course>>({
      {Course::keep_as_found, "keep it as found"},
      {Course::clean_for_show, "clean it for show"},
      {Course::make_it_fish, "make it fish"},
      {Course::rebuild_to_fish, "rebuild it to fish"},
  });
  return said(kSaid, value);
}

std::string changed_words(Trait trait, const State& state) {
  const std::string name(base::word_of(trait));
  if (!state[trait]) return name + " not determined";
  const double at = *state[trait];
  if (trait == Trait::originality) return fmt::format("{} {:.0f} of 100", name, 100 - 10 * at);
  if (trait == Trait::box) return at == 0 ? "with its box" : "without a box";
  std::string words(knowledge::axis_word(name, static_cast<int>(at)));
  std::replace(words.begin(), words.end(), '-', ' ');
  return name + " " + words;
}

}  // namespace winchbook::answers
