#include "answers/grade.h"

#include <utility>

namespace winchbook::answers {

base::Result<Graded> grade(library::Library& library, const std::filesystem::path& path) {
  auto loaded = recordfile::read(library.files(), path, world.data / "schemas");
  if (!loaded) return loaded.faults();
  auto knowledge = knowledge::load(library.files(), world.data);
  if (!knowledge) return knowledge.faults();
  assess::Assessment assessment = assess::assess(loaded->record, *knowledge);
  return Graded{std::move(loaded).value(), std::move(knowledge).value(), std::move(assessment)};
}

}  // namespace winchbook::answers
