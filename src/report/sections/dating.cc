#include "report/dating_chart.h"
#include "report/dating_words.h"
#include "report/marks_table.h"
#include "report/sections.h"
#include "report/told.h"

namespace winchbook::report {
namespace {

/// The answer; the bench's own where the marks give none.
std::string stand_first(const Telling& telling) {
  const bool marked = !telling.record.markings.empty();
  const std::string none = marked ? "" : telling.words.say("dating.no-marks");
  if (std::string answer = dating_answer(telling); !answer.empty()) return joined({none, answer});
  if (std::string made = made_sentence(telling); !made.empty()) return joined({none, made});
  return marked ? telling.words.say("dating.marks-only") : none;
}

document::Paragraph how(const Telling& telling, bool with_profile) {
  const auto& made = telling.record.reel.made;
  const bool says_why = made && !made->evidence.because.empty();
  document::Paragraph paragraph = says_why ? telling.paragraph(made->evidence.because)
                                           : telling.sentence(telling.words.say("dating.how"));
  const auto beside = [&](const char* lead, const char* words) {
    paragraph.beside.emplace_back(
        document::SideNote{document::with_lead(telling.words.say(lead), telling.words.say(words))});
  };
  beside("dating.hard-and-soft", "dating.hard-and-soft-means");
  if (with_profile) beside("dating.how-likely", "dating.how-likely-means");
  return paragraph;
}

void add_doubts(const Telling& telling, document::Chapter& chapter) {
  const std::vector<std::string> doubts = dating_doubts(telling);
  if (doubts.empty()) return;
  chapter.blocks.emplace_back(document::Subhead{telling.words.say("dating.doubts")});
  for (const std::string& doubt : doubts)
    chapter.blocks.emplace_back(telling.sentence(doubt));
}

}  // namespace

std::optional<document::Chapter> tell_dating(const Telling& telling) {
  document::Chapter chapter = telling.chapter("dating");
  chapter.stand_first = stand_first(telling);
  chapter.tells = told_made(telling.assessment.identity.made);
  const auto& made = telling.record.reel.made;
  auto figure = dating_chart(telling);
  // With nothing to show, the sentence above is the whole chapter.
  const bool says_why = made && !made->evidence.because.empty();
  if (telling.record.markings.empty() && !figure && !says_why) {
    if (chapter.stand_first.empty()) return std::nullopt;
    return chapter;
  }
  if (figure)
    chapter.blocks.emplace_back(std::move(*figure)).tells = told_dating(telling.assessment.dating);
  if (const std::size_t more = marks_not_drawn(telling); more > 0) {
    chapter.blocks.emplace_back(
        telling.sentence(telling.words.say("dating.not-drawn", {{"count", more}})));
  }
  chapter.blocks.emplace_back(how(telling, telling.assessment.dating.profile.size() > 1));
  add_doubts(telling, chapter);
  if (auto marks = marks_table(telling, MarksOf::reel)) chapter.blocks.emplace_back(*marks);
  if (auto other = other_evidence_table(telling)) chapter.blocks.emplace_back(*other);
  if (auto marks = marks_table(telling, MarksOf::bench)) chapter.blocks.emplace_back(*marks);
  return chapter;
}

}  // namespace winchbook::report
