#include <utility>

#include "report/sections.h"

namespace winchbook::report {
namespace {

std::string when_and_by(const Telling& telling, const record::LifeEvent& event) {
  std::vector<std::string> parts;
  if (event.date && !event.date_as_told.empty()) {
    parts.push_back(telling.words.say(
        "life.date-as-told",
        {{"date", telling.words.date(*event.date)}, {"told", event.date_as_told}}));
  } else if (event.date) {
    parts.push_back(telling.words.date(*event.date));
  } else if (!event.date_as_told.empty()) {
    parts.push_back(telling.words.say("life.as-told", {{"told", event.date_as_told}}));
  }
  if (event.by) parts.push_back(telling.name(*event.by));
  return telling.words.capitalised(telling.words.joined("join.comma", parts));
}

/// Why it must stay, when it must; how it is known, otherwise.
document::SideNote beside(const Telling& telling, const record::LifeEvent& event) {
  document::Text text;
  if (!event.keep_because.empty()) {
    text = document::with_lead(telling.words.say("life.must-stay"), "");
    text.parts.emplace_back(document::Run{" "});
    append(text, telling.text(event.keep_because));
    text.parts.emplace_back(document::LineEnd{});
  }
  std::string known = when_and_by(telling, event);
  if (known.empty()) {
    known = event.source;
  } else if (!event.source.empty()) {
    known = telling.words.say("life.source", {{"when", known}, {"source", event.source}});
  }
  text.parts.emplace_back(document::Run{std::move(known)});
  return {std::move(text)};
}

}  // namespace

std::optional<document::Chapter> tell_life(const Telling& telling) {
  if (telling.record.life.empty()) return std::nullopt;
  document::Chapter chapter = telling.chapter("life");
  chapter.ledger = document::Ledger::none;
  chapter.stand_first = telling.counted("life.answer", telling.record.life.size());
  for (const record::LifeEvent& event : telling.record.life) {
    document::Subhead head{telling.words.capitalised(event.title)};
    head.anchor = "life-" + event.id.text;
    chapter.blocks.emplace_back(std::move(head));
    auto paragraphs = telling.paragraphs(event.what, document::ParagraphManner::unindented);
    if (paragraphs.empty()) paragraphs.emplace_back(telling.sentence(event.title));
    auto& first = std::get<document::Paragraph>(paragraphs.front());
    first.beside.emplace_back(beside(telling, event));
    for (document::Block& block : paragraphs)
      chapter.blocks.push_back(std::move(block));
  }
  return chapter;
}

}  // namespace winchbook::report
