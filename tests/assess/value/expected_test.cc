#include "assess/value/expected.h"

#include <doctest/doctest.h>

#include "base/files.h"

namespace winchbook::assess::value {
namespace {

using record::Course;

const knowledge::Courses& courses() {
  static const knowledge::Courses loaded = [] {
    auto read = knowledge::load_courses({base::RealFiles(), WINCHBOOK_SOURCE_DIR});
    REQUIRE(read);
    return std::move(read).value();
  }();
  return loaded;
}

State state(double of_all) {
  State one;
  one.traits.fill(of_all);
  return one;
}

record::Visit chosen(Course course) {
  record::Visit visit;
  visit.advice.emplace();
  visit.advice->chosen = course;
  return visit;
}

}  // namespace

TEST_CASE("the course that was taken stands as left once the reel is handed back") {
  record::Visit visit = chosen(Course::make_it_fish);
  auto states = course_states(visit, state(2), state(1), courses());
  REQUIRE(states.size() == 4);
  CHECK(states[2].course == Course::make_it_fish);
  CHECK(states[2].from == StateFrom::expected);
  visit.hand_back = record::HandBack{};
  states = course_states(visit, state(2), state(1), courses());
  CHECK(states[2].from == StateFrom::left);
  CHECK(states[2].at == 1);
  CHECK(changes(states[2].state, state(1)).empty());
}

TEST_CASE("a course that changes nothing stands as found, and the rest are counted in order") {
  const record::Visit visit;
  const auto states = course_states(visit, state(2), state(1), courses());
  REQUIRE(states.size() == 4);
  CHECK(states[0].course == Course::keep_as_found);
  CHECK(states[0].from == StateFrom::found);
  const auto expected = expected_states(states);
  std::size_t at = 0;
  for (const CourseState& one : states) {
    if (one.from != StateFrom::expected) continue;
    CHECK(one.at == at);
    CHECK(changes(expected.at(at), one.state).empty());
    ++at;
  }
  CHECK(expected.size() == at);
  CHECK(at > 0);
}

}  // namespace winchbook::assess::value
