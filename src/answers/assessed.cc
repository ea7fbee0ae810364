#include "answers/assessed.h"

namespace winchbook::answers {

base::Result<Assessed> assessed(const library::World& world, const record::Record& record) {
  auto knowledge = knowledge::load(world.files, world.data, assess::word(record.reel.kind));
  if (!knowledge) return knowledge.faults();
  return Assessed(std::move(knowledge).value(), record);
}

}  // namespace winchbook::answers
