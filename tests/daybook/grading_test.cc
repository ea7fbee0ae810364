#include <doctest/doctest.h>

#include "daybook/entries/grade_set.h"

namespace winchbook::daybook {
namespace {

Grading grading_of(std::string_view typed) {
  Grading grading;
  CHECK(read_typed(typed, grading).empty());
  return grading;
}

}  // namespace

TEST_CASE("phrases of a part are answers, a certainty and a state") {
  const Grading grading = grading_of(
      "not original, another maker's, running change, possible, untouched 84.5, worn through, "
      "corroded 0.5, defects 2, material brass, finish nickel plate");
  CHECK(grading.of_this_reel == record::OfThisReel::no);
  CHECK(grading.made_by == record::MadeBy::another);
  CHECK(grading.pattern == record::Pattern::running_change);
  CHECK(grading.certainty == record::Certainty::possible);
  REQUIRE(grading.surface.size() == 2);
  CHECK(grading.surface[0].first == record::SurfaceState::untouched);
  CHECK(grading.surface[0].second->value.text() == "84.5");
  CHECK(grading.surface[1].first == record::SurfaceState::worn_through);
  CHECK_FALSE(grading.surface[1].second);
  CHECK(grading.corroded->value.text() == "0.5");
  CHECK(grading.defects->value.text() == "2");
  CHECK(grading.material == "brass");
  CHECK(grading.finish == "nickel plate");
  CHECK_FALSE(grading.presence);
  CHECK_FALSE(grading.filled);
}

TEST_CASE("what is said later is said of the same parts") {
  Grading grading = grading_of("original");
  CHECK(read_typed("missing", grading).empty());
  CHECK(grading.of_this_reel == record::OfThisReel::yes);
  CHECK(grading.presence == record::Presence::missing);
  CHECK(grading.typed == "original, missing");
}

TEST_CASE("a place is filled, filled in part, empty or not examined") {
  CHECK(grading_of("filled").filled == record::Filled::yes);
  CHECK(grading_of("in part").filled == record::Filled::in_part);
  CHECK(grading_of("empty").filled == record::Filled::empty);
  CHECK(grading_of("not examined").filled == record::Filled::not_examined);
  CHECK(grading_of("not examined").presence == record::Presence::not_examined);
}

TEST_CASE("every phrase that says nothing is told, and nothing of the rest is taken") {
  Grading grading;
  const auto faults = read_typed("original, shiny, corroded much", grading);
  REQUIRE(faults.size() == 2);
  CHECK(faults[0].message == "\"shiny\" says nothing of a part");
  CHECK(faults[1].message == "\"corroded much\" says nothing of a part");
  CHECK_FALSE(grading.has_answer());
  CHECK(grading.typed.empty());
}

}  // namespace winchbook::daybook
