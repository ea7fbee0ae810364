#include "report/sections.h"

namespace winchbook::report {

std::optional<document::Chapter> tell_later(const Telling& telling) {
  document::Chapter chapter = telling.chapter("later");
  chapter.stand_first = telling.words.say("later.answer");
  chapter.starts_page = true;
  const std::string owner = telling.words.say("later.owner");
  const std::string service = telling.words.say("later.service");
  constexpr std::size_t kOwners = 6;
  constexpr std::size_t kServices = 6;
  chapter.blocks.emplace_back(document::RuledLines{std::vector(kOwners, owner), 1});
  chapter.blocks.emplace_back(document::RuledLines{std::vector(kServices, service), 2});
  return chapter;
}

}  // namespace winchbook::report
