#include "knowledge/courses.h"

#include <doctest/doctest.h>

#include "knowledge/patched_files.h"

namespace winchbook::knowledge {

TEST_CASE("what a course makes of a reel has a word, or is refused with its line") {
  const std::filesystem::path project = WINCHBOOK_SOURCE_DIR;
  const auto whole = load_courses({PatchedFiles(), project});
  REQUIRE(whole);
  CHECK_FALSE(whole->outcomes.empty());

  const PatchedFiles wordless("courses.xml", " at-worst=\"with-care\"", "");
  const auto faults = load_courses({wordless, project});
  REQUIRE_FALSE(faults);
  CHECK(faults.faults().front().rule == "course-outcome");
  CHECK(faults.faults().front().where.line > 1);
}

}  // namespace winchbook::knowledge
