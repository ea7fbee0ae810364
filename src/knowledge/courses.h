#pragma once

#include <array>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "knowledge/source.h"

namespace winchbook::knowledge {

/// What a course does to one matter, where the record does not say it better.
struct CourseScore {
  std::string course;  ///< "make-it-fish", as records write it
  std::string matter;  ///< "way-back"
  int points = 0;      ///< of a hundred
  std::string reason;
};

/// The bench's points: one for every course and matter.
using CourseScores = std::vector<CourseScore>;

/// What a course makes of one axis of the reel's state: a worse word than `at_worst` becomes it, a
/// better one than `at_best` becomes that; 0 is the axis's best word, 3 its last.
struct CourseOutcome {
  std::string course;
  std::string axis;  ///< "working"
  std::optional<int> at_worst;
  std::optional<int> at_best;
  std::string reason;
};

/// An axis of a reel's state and its four words, best first.
struct StateAxis {
  std::string_view name;
  std::array<std::string_view, 4> words;
};
inline constexpr std::array kStateAxes{
    StateAxis{"surface",
              {"over-three-quarters", "over-half", "over-a-quarter", "a-quarter-or-less"}},
    StateAxis{"structure", {"sound", "marked", "weakened", "unsafe"}},
    StateAxis{"working", {"as-made", "with-care", "in-part", "not"}},
    StateAxis{"completeness", {"whole", "nearly", "part", "little"}},
};

/// All that is known of the courses besides the record.
struct Courses {
  CourseScores scores;
  std::vector<CourseOutcome> outcomes;
};

/// The place of a word among the four of its axis, the best 0; empty for a word that is none.
/// Example: "working", "with-care" is 1.
[[nodiscard]] std::optional<int> axis_step(std::string_view axis, std::string_view word);
/// The word at a place; empty for none. Example: "working", 1 is "with-care".
[[nodiscard]] std::string_view axis_word(std::string_view axis, int step);

/// The row of a course and matter; every one is there (the schema sees to it).
[[nodiscard]] const CourseScore& find_score(const CourseScores& scores, std::string_view course,
                                            std::string_view matter);

/// Reads `shared/advice/courses.xml`, validated by `schemas/knowledge-1.xsd`.
/// Error for an outcome with a word that is none of its axis, or with neither end.
[[nodiscard]] base::Result<Courses> load_courses(const Source& source);

}  // namespace winchbook::knowledge
