#include <algorithm>

#include "report/sections.h"

namespace winchbook::report {
namespace {

using document::Block;

/// Who told it, and whether they have read it and agreed.
document::SideNote teller_note(const Telling& telling, const record::Story& story) {
  const std::string name = telling.name(*story.told_by);
  const std::string key = story.approved_on ? "story.told-and-approved" : "story.told";
  const std::string date = story.approved_on ? telling.words.date(*story.approved_on) : "";
  const bool margin =
      std::any_of(story.paragraphs.begin(), story.paragraphs.end(),
                  [](const record::Paragraph& one) { return one.note.has_value(); });
  return {document::with_lead(telling.words.say("story.who-told"),
                              joined({telling.words.say(key, {{"name", name}, {"date", date}}),
                                      margin ? telling.words.say("story.margin") : ""}))};
}

void add_pictures(const Telling& telling, document::Chapter& chapter) {
  const auto& pictures = telling.pictures.of("story");
  if (pictures.empty()) return;
  if (pictures.size() == 1) {
    chapter.blocks.emplace_back(telling.figure(*pictures.front(), document::Width::main));
    return;
  }
  document::FigureRow row;
  row.figures.push_back(telling.figure(*pictures[0], document::Width::side));
  row.figures.push_back(telling.figure(*pictures[1], document::Width::main));
  chapter.blocks.emplace_back(std::move(row));
}

}  // namespace

std::optional<document::Chapter> tell_story(const Telling& telling) {
  const auto& story = telling.record.story;
  if (!story || story->paragraphs.empty()) return std::nullopt;
  document::Chapter chapter = telling.chapter("story");
  if (!story->title.empty()) chapter.title = story->title;
  chapter.stand_first = telling.plain(story->answer);
  for (Block& block : telling.paragraphs(story->paragraphs, document::ParagraphManner::opening)) {
    chapter.blocks.push_back(std::move(block));
  }
  if (story->told_by) {
    auto& first = std::get<document::Paragraph>(chapter.blocks.front());
    first.beside.emplace(first.beside.begin(), teller_note(telling, *story));
  }
  add_pictures(telling, chapter);
  return chapter;
}

}  // namespace winchbook::report
