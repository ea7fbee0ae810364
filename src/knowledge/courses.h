#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "base/files.h"
#include "base/result.h"

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

/// The row of a course and matter; every one is there (the schema sees to it).
[[nodiscard]] const CourseScore& find_score(const CourseScores& scores, std::string_view course,
                                            std::string_view matter);

/// Reads `shared/advice/courses.xml` below `data`, validated by `schemas/knowledge-1.xsd`.
[[nodiscard]] base::Result<CourseScores> load_courses(const base::Files& files,
                                                      const std::filesystem::path& data);

}  // namespace winchbook::knowledge
