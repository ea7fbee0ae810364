#include "assess/value/expected.h"

#include <algorithm>
#include <array>
#include <string_view>

#include "record/enum_words.h"

namespace winchbook::assess::value {
namespace {

constexpr std::array<std::string_view, 4> kAxes{"surface", "structure", "working", "completeness"};
constexpr int kLast = 3;  // the number of an axis's last word

/// An axis after an outcome.
std::optional<double> after(const std::optional<double>& before,
                            const knowledge::CourseOutcome& outcome) {
  if (outcome.at_worst == 0) return 0;
  if (outcome.at_best == kLast) return kLast;
  std::optional<double> then = before;
  if (then && outcome.at_worst) then = std::min<double>(*then, *outcome.at_worst);
  if (then && outcome.at_best) then = std::max<double>(*then, *outcome.at_best);
  return then;
}

}  // namespace

State expected_state(const State& found, record::Course course, const knowledge::Courses& courses) {
  State state = found;
  const std::string_view name = record::word_of(course);
  for (const knowledge::CourseOutcome& outcome : courses.outcomes) {
    if (outcome.course != name) continue;
    const auto at = std::find(kAxes.begin(), kAxes.end(), outcome.axis) - kAxes.begin();
    auto& axis = state[static_cast<Trait>(at)];
    axis = after(axis, outcome);
  }
  if (auto& lost = state[Trait::originality]) {
    constexpr double kTens = 10;
    constexpr double kHundred = 100;
    const int points = find_score(courses.scores, name, "originality").points;
    if (points < kHundred) lost = kTens - (kTens - *lost) * points / kHundred;
  }
  return state;
}

std::vector<CourseState> course_states(const record::Visit& visit, const State& found,
                                       const State& left, const knowledge::Courses& courses) {
  using record::Course;
  std::vector<CourseState> states;
  std::size_t expected = 0;
  for (const Course course : {Course::keep_as_found, Course::clean_for_show, Course::make_it_fish,
                              Course::rebuild_to_fish}) {
    if (visit.hand_back && visit.advice && visit.advice->chosen == course) {
      states.push_back({course, StateFrom::left, left, 1});
      continue;
    }
    const State then = expected_state(found, course, courses);
    const bool changes_nothing = course == Course::keep_as_found || changes(found, then).empty();
    states.push_back(changes_nothing ? CourseState{course, StateFrom::found, found, 0}
                                     : CourseState{course, StateFrom::expected, then, expected++});
  }
  return states;
}

std::vector<State> expected_states(const std::vector<CourseState>& courses) {
  std::vector<State> states;
  for (const CourseState& one : courses) {
    if (one.from == StateFrom::expected) states.push_back(one.state);
  }
  return states;
}

std::string_view axis_word(Trait axis, const State& state) {
  return knowledge::axis_word(kAxes.at(static_cast<std::size_t>(axis)),
                              static_cast<int>(*state[axis]));
}

const Estimate& estimate_of(const Finding& finding, const CourseState& course) {
  return course.from == StateFrom::expected ? finding.expected.at(course.at)
                                            : finding.estimates.at(course.at);
}

}  // namespace winchbook::assess::value
