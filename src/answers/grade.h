#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "answers/telling.h"
#include "assess/assessment.h"
#include "base/result.h"
#include "forms/job.h"
#include "knowledge/knowledge.h"
#include "library/library.h"
#include "recordfile/record_file.h"

namespace winchbook::answers {

/// A record with everything that could be reckoned from it.
struct Graded {
  recordfile::LoadedRecord loaded;
  const knowledge::Knowledge* knowledge = nullptr;  ///< the library's
  assess::Assessment assessment;
};

/// Reads the record at `path` (a reel's folder or its record.xml) and the knowledge, and asks the
/// questions. Nothing is written. Photographs are not looked at.
[[nodiscard]] base::Result<Graded> grade(library::Library& library,
                                         const std::filesystem::path& path);

/// The answers in sentences and tables, with their reasons: the last visit whole, earlier ones by
/// their figures.
[[nodiscard]] Blocks grade_told(const Graded& graded, const words::Catalogue& words);

/// The reel's name, and its model where that is another.
[[nodiscard]] std::string reel_name(const record::Record& record, const words::Catalogue& words);

/// The same as JSON that keeps schemas/grade.schema.json. Figures are points of a hundred with two
/// decimals; a range is [low, high].
[[nodiscard]] std::string grade_as_json(const Graded& graded);

/// How a question about a graded record is asked and told.
struct GradedTelling {
  std::string_view json_help;
  Blocks (*told)(const Graded&, const words::Catalogue&);
  std::string (*as_json)(const Graded&);
};
/// Reads the record, grades it and tells it. What is doubtful in the record is told beside it.
[[nodiscard]] forms::Job graded_job(const GradedTelling& telling);

[[nodiscard]] forms::Job grade_job();

}  // namespace winchbook::answers
