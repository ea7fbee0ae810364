#include "knowledge/courses.h"

#include <algorithm>
#include <charconv>
#include <utility>

#include "knowledge/valid_file.h"

namespace winchbook::knowledge {
namespace {

CourseOutcome outcome_from(pugi::xml_node node) {
  CourseOutcome one;
  one.axis = node.attribute("of").value();
  one.at_worst = axis_step(one.axis, node.attribute("at-worst").value());
  one.at_best = axis_step(one.axis, node.attribute("at-best").value());
  one.reason = folded(node);
  return one;
}

}  // namespace

const CourseScore& find_score(const CourseScores& scores, std::string_view course,
                              std::string_view matter) {
  static const CourseScore kNone;
  const auto found = std::find_if(scores.begin(), scores.end(), [&](const CourseScore& one) {
    return one.course == course && one.matter == matter;
  });
  return found == scores.end() ? kNone : *found;
}

std::optional<int> axis_step(std::string_view axis, std::string_view word) {
  for (const StateAxis& one : kStateAxes) {
    if (one.name != axis) continue;
    const auto* const found = std::find(one.words.begin(), one.words.end(), word);
    if (found == one.words.end()) return std::nullopt;
    return static_cast<int>(found - one.words.begin());
  }
  return std::nullopt;
}

std::string_view axis_word(std::string_view axis, int step) {
  for (const StateAxis& one : kStateAxes) {
    if (one.name == axis && step >= 0 && step < static_cast<int>(one.words.size())) {
      return one.words.at(static_cast<std::size_t>(step));
    }
  }
  return {};
}

base::Result<Courses> load_courses(const Source& source) {
  const std::filesystem::path path = source.shared("advice") / "courses.xml";
  const auto document = read_valid(source, path, "courses");
  if (!document) return document.faults();
  Courses courses;
  base::Diagnostics faults;
  for (const pugi::xml_node course : document->root().children("course")) {
    for (const pugi::xml_node score : course.children("score")) {
      const std::string_view points = score.attribute("points").value();
      CourseScore one{course.attribute("name").value(), score.attribute("of").value(), 0,
                      folded(score)};
      std::from_chars(points.data(), points.data() + points.size(), one.points);
      courses.scores.push_back(std::move(one));
    }
    for (const pugi::xml_node node : course.children("outcome")) {
      CourseOutcome one = outcome_from(node);
      one.course = course.attribute("name").value();
      if (!one.at_worst && !one.at_best) {
        faults.push_back(base::error_at(document->where(node), "this outcome says no word",
                                        "write at-worst or at-best, with a word of the axis",
                                        "course-outcome"));
      }
      courses.outcomes.push_back(std::move(one));
    }
  }
  if (!faults.empty()) return faults;
  return courses;
}

}  // namespace winchbook::knowledge
