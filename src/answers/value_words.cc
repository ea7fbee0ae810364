#include "answers/value_words.h"

#include <fmt/format.h>

#include <algorithm>

#include "answers/telling.h"
#include "knowledge/courses.h"

namespace winchbook::answers {

using assess::value::State;
using assess::value::Trait;

std::string becomes(const words::Catalogue& words, Trait trait, const State& state) {
  const std::string name = called(words, "value.trait", trait);
  if (!state[trait]) return words.say("value.becomes.unknown", {{"trait", name}});
  const double at = *state[trait];
  if (trait == Trait::originality) {
    return words.say("value.becomes.points",
                     {{"trait", name}, {"points", fmt::format("{:.0f}", 100 - 10 * at)}});
  }
  if (trait == Trait::box) {
    return words.say(at == 0 ? "answer.value.with-box" : "answer.value.without-box");
  }
  const std::string_view axis = base::word_of(trait);
  const std::string key =
      fmt::format("condition.{}.{}", axis, knowledge::axis_word(axis, static_cast<int>(at)));
  return words.say("value.becomes.word", {{"trait", name}, {"word", words.say(key)}});
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
