#include <utility>

#include "report/sections.h"

namespace winchbook::report {

std::optional<document::Chapter> tell_value_limits(const Telling& telling) {
  if (telling.worth == nullptr) return std::nullopt;
  const auto& words = telling.words;
  const record::Bench& bench = telling.record.bench;
  document::Chapter chapter = telling.chapter("value-limits");
  document::Facts facts;
  facts.label_width = 84;
  facts.width = document::Width::full;
  const auto add = [&](const char* key, document::Text text) {
    facts.facts.push_back({words.say(key), std::move(text)});
  };
  const auto say = [&](const char* key) { return document::plain(words.say(key)); };
  add("value.done", say("value.done-is"));
  add("value.not-considered", say("value.not-considered-is"));
  add("value.cost", say("value.cost-is"));
  add("value.asking", say("value.asking-is"));
  add("value.markets", say("value.markets-is"));
  add("value.restrictions", say("value.restrictions-is"));
  add("value.assumed", say("value.assumed-is"));
  add("value.bench-interest", bench.own_interest.empty() ? say("not-entered.for-the-pen")
                                                         : telling.text(bench.own_interest));
  add("value.fee",
      document::plain(words.say("value.fee-is", {{"count", telling.record.visits.size()}})));
  add("value.kind", say("value.kind-is"));
  chapter.blocks.emplace_back(std::move(facts));
  document::Paragraph declared = telling.sentence(words.say("value.declared"));
  declared.manner = document::ParagraphManner::unindented;
  declared.width = document::Width::full;
  chapter.blocks.emplace_back(std::move(declared));
  document::RuledLines lines;
  lines.labels = {words.say("value.signed"), words.say("value.signed-name"),
                  words.say("value.signed-on")};
  chapter.blocks.emplace_back(std::move(lines));
  return chapter;
}

}  // namespace winchbook::report
