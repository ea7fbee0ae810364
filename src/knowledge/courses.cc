#include "knowledge/courses.h"

#include <algorithm>
#include <charconv>

#include "knowledge/valid_file.h"

namespace winchbook::knowledge {

const CourseScore& find_score(const CourseScores& scores, std::string_view course,
                              std::string_view matter) {
  static const CourseScore kNone;
  const auto found = std::find_if(scores.begin(), scores.end(), [&](const CourseScore& one) {
    return one.course == course && one.matter == matter;
  });
  return found == scores.end() ? kNone : *found;
}

base::Result<CourseScores> load_courses(const base::Files& files,
                                        const std::filesystem::path& data) {
  const auto schema = knowledge_schema(files, data);
  if (!schema) return schema.faults();
  const auto document =
      read_valid(files, *schema, data / "shared" / "advice" / "courses.xml", "courses");
  if (!document) return document.faults();
  CourseScores scores;
  for (const pugi::xml_node course : document->root().children("course")) {
    for (const pugi::xml_node score : course.children("score")) {
      const std::string_view points = score.attribute("points").value();
      CourseScore one{course.attribute("name").value(), score.attribute("of").value(), 0,
                      folded(score)};
      std::from_chars(points.data(), points.data() + points.size(), one.points);
      scores.push_back(std::move(one));
    }
  }
  return scores;
}

}  // namespace winchbook::knowledge
