#pragma once

#include <array>
#include <cstddef>
#include <string_view>
#include <vector>

#include "assess/value/value.h"
#include "base/enum_words.h"
#include "knowledge/courses.h"
#include "record/visit.h"
#include "record/words.h"

/// What each course would do to the value, though three of the four are never taken. A state that
/// the sales cannot see has no figure, so a rebuild is mostly refused, and the trait is named.
namespace winchbook::assess::value {

/// Where the state that stands for a course comes from.
enum class StateFrom {
  found,     ///< as found: the course changes nothing that sales tell
  left,      ///< as left: it is the course that was taken
  expected,  ///< nobody has seen it: what the courses' outcomes make of the state as found
};

[[nodiscard]] constexpr auto enum_words(StateFrom /*list*/) {
  return std::to_array<base::EnumWord<StateFrom>>({
      {StateFrom::found, "found"},
      {StateFrom::left, "left"},
      {StateFrom::expected, "expected"},
  });
}

/// A course, and the state of the reel after it.
struct CourseState {
  record::Course course = record::Course::keep_as_found;
  StateFrom from = StateFrom::found;
  State state;
  std::size_t at = 0;  ///< of Finding::estimates, or of Finding::expected
};

/// What a course makes of the state as found: each axis by its outcomes, originality times the
/// course's points. What is not known stays so, unless the outcome leaves one word only.
/// Example: working "in part" and an outcome of at worst "with care" is "with care".
[[nodiscard]] State expected_state(const State& found, record::Course course,
                                   const knowledge::Courses& courses);

/// The states that stand for the four courses of a visit. The course that was taken stands as left,
/// one that changes nothing as found, the others as they are expected.
[[nodiscard]] std::vector<CourseState> course_states(const record::Visit& visit, const State& found,
                                                     const State& left,
                                                     const knowledge::Courses& courses);

/// Of those, the states that are only expected, in the order in which `at` counts them.
[[nodiscard]] std::vector<State> expected_states(const std::vector<CourseState>& courses);

/// The word of one of the four axes in a state that tells it. Example: working, 1: "with-care".
[[nodiscard]] std::string_view axis_word(Trait axis, const State& state);

/// The estimate of a course's state.
[[nodiscard]] const Estimate& estimate_of(const Finding& finding, const CourseState& course);

}  // namespace winchbook::assess::value
