#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <utility>
#include <vector>

#include "assess/condition/condition.h"
#include "report/table_columns.h"
#include "report/value_words.h"

namespace winchbook::report {
namespace {

using assess::value::CourseState;
using assess::value::Estimate;
using assess::value::Method;
using assess::value::Note;
using assess::value::State;
using assess::value::StateFrom;
using assess::value::Trait;

/// "working with care", "originality 78 of 100".
std::string becomes(const Telling& telling, Trait trait, const State& state) {
  const std::string name = trait_words(telling, trait);
  if (!state[trait]) return telling.words.say("value.becomes.unknown", {{"trait", name}});
  if (trait == Trait::originality) {
    constexpr double kTens = 10;
    constexpr double kWhole = 100;
    const auto points = std::lround(kWhole - kTens * *state[trait]);
    return telling.words.say("value.becomes.points",
                             {{"trait", name}, {"points", static_cast<std::size_t>(points)}});
  }
  const auto& axes = assess::condition::kStateAxes;
  const std::string axis(axes.at(static_cast<std::size_t>(trait)).name);
  const std::string word(assess::value::axis_word(trait, state));
  return telling.words.say(
      "value.becomes.word",
      {{"trait", name}, {"word", telling.words.say("condition." + axis + "." + word)}});
}

/// What the reel would be like, and why there is no figure if there is none.
std::string why(const Telling& telling, const CourseState& course, const Estimate& estimate) {
  const auto& words = telling.words;
  if (course.from == StateFrom::left) return words.say("value.course.left");
  if (course.from == StateFrom::found) {
    return words.say(course.course == record::Course::keep_as_found ? "value.course.found"
                                                                    : "value.course.same");
  }
  std::vector<std::string> changed;
  for (const Trait trait : changes(telling.worth->states.front().state, course.state))
    changed.push_back(becomes(telling, trait, course.state));
  std::vector<std::string> sentences{
      words.say("value.course.expected", {{"changes", words.list(changed)}})};
  for (const Note note : estimate.notes) {
    if (note == Note::beyond || note == Note::alike || note == Note::far_beyond ||
        note == Note::apart || note == Note::change_not_told) {
      sentences.push_back(note_words(telling, estimate, note));
    }
  }
  return joined(sentences);
}

bool too_few(const Estimate& estimate) {
  return std::find(estimate.notes.begin(), estimate.notes.end(), Note::too_few) !=
         estimate.notes.end();
}

}  // namespace

std::optional<document::Table> courses_value_table(const Telling& telling) {
  const Worth& worth = *telling.worth;
  const auto& words = telling.words;
  if (worth.courses.empty() || too_few(explained(telling))) return std::nullopt;
  using Align = document::Column::Align;
  document::Table table = table_of(telling, {{"advice.course", {Align::words, 96, true}},
                                             {"value.column.range", {Align::words, 96}},
                                             {"value.column.state", {Align::words, 0}}});
  table.title = words.say("value.courses");
  table.summary = words.say("value.courses-summary");
  const auto& advice = telling.visit.advice;
  for (const CourseState& one : worth.courses) {
    const Estimate& estimate = estimate_of(worth.finding, one);
    document::Text name;
    name.parts.emplace_back(document::Run{
        .text = words.capitalised(words.say("course." + std::string(record::word_of(one.course)))),
        .bold = advice && advice->chosen == one.course});
    std::string range = words.say("value.no-figure");
    if (estimate.method != Method::none) {
      range = words.say(
          "value.range-only",
          {{"low", rounded_words(telling, estimate.low, assess::value::RoundPrice::down)},
           {"high", rounded_words(telling, estimate.high, assess::value::RoundPrice::up)}});
    }
    table.rows.push_back({{{std::move(name)},
                           {document::plain(std::move(range))},
                           {document::plain(why(telling, one, estimate))}}});
  }
  table.below = document::plain(words.say("value.courses-below"));
  return table;
}

}  // namespace winchbook::report
