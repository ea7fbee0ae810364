#include "report/sections.h"

namespace winchbook::report {

std::optional<document::Chapter> tell_later(const Telling& telling) {
  document::Chapter chapter = telling.chapter("later");
  chapter.stand_first = telling.words.say("later.answer");
  const std::string owner = telling.words.say("later.owner");
  const std::string service = telling.words.say("later.service");
  chapter.blocks.emplace_back(document::RuledLines{{owner, owner, owner, owner}, 1});
  chapter.blocks.emplace_back(document::RuledLines{{service, service, service, service}, 2});
  return chapter;
}

}  // namespace winchbook::report
