#include "answers/assessed.h"

namespace winchbook::answers {

base::Result<Assessed> assessed(library::Library& library, const record::Record& record) {
  auto knowledge = knowledge::load(library.files(), world.data, assess::word(record.reel.kind));
  if (!knowledge) return knowledge.faults();
  return Assessed(std::move(knowledge).value(), record);
}

}  // namespace winchbook::answers
