#include "answers/grade.h"

#include <memory>
#include <utility>

namespace winchbook::answers {
namespace {

struct RecordAsked {
  std::filesystem::path path;
  bool json = false;
};

}  // namespace

base::Result<Graded> grade(library::Library& library, const std::filesystem::path& path) {
  auto loaded = library.record(path);
  if (!loaded) return loaded.faults();
  const auto knowledge = library.knowledge(record::word_of(loaded->record.reel.kind));
  if (!knowledge) return knowledge.faults();
  assess::Assessment assessment = assess::assess(loaded->record, **knowledge);
  return Graded{std::move(loaded).value(), *knowledge, std::move(assessment)};
}

forms::Job graded_job(const GradedTelling& telling) {
  const auto asked = std::make_shared<RecordAsked>();
  return {{forms::field("PATH", "the reel's folder, or its record.xml", asked->path).must(),
           forms::flag("--json", std::string(telling.json_help), asked->json)},
          [asked, telling](forms::Setting& setting) -> base::Result<forms::Outcome> {
            const auto graded = grade(setting.library, asked->path);
            if (!graded) return graded.faults();
            const auto& loaded = graded->loaded;
            if (asked->json) return forms::Outcome{telling.as_json(*graded), loaded.warnings, {}};
            auto outcome =
                tell(setting, loaded.record.language,
                     [&](const words::Catalogue& words) { return telling.told(*graded, words); });
            if (outcome) outcome.value().doubts = loaded.warnings;
            return outcome;
          },
          {}};
}

forms::Job grade_job() {
  return graded_job({"the answers as JSON (schemas/grade.schema.json)", grade_told, grade_as_json});
}

}  // namespace winchbook::answers
