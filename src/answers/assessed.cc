#include "answers/assessed.h"

namespace winchbook::answers {

base::Result<assess::Assessment> assessed(library::Library& library, const record::Record& record) {
  const auto knowledge = library.knowledge(record::word_of(record.reel.kind));
  if (!knowledge) return knowledge.faults();
  return assess::assess(record, **knowledge);
}

}  // namespace winchbook::answers
