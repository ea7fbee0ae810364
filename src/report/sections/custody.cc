#include <utility>

#include "report/sections.h"

namespace winchbook::report {
namespace {

using record::CustodyGap;
using record::CustodyStep;

/// "Augusta Merrow [1911/1979], purser of the Ellery Sound ferry, bought new, 1948": the holder,
/// who they were, how it came to them, and when.
document::Text step_words(const Telling& telling, const CustodyStep& step) {
  const record::Person* person = find(telling.record, step.holder);
  document::Text text = document::plain(telling.name(step.holder));
  const auto add = [&](std::string words) {
    text.parts.emplace_back(document::Run{std::move(words)});
  };
  if (person != nullptr && person->lived && record::told(person->name) != nullptr) {
    add(telling.words.say("custody.lived", {{"dates", telling.words.date(*person->lived)}}));
  }
  if (step.certainty != record::Certainty::certain) {
    add(telling.words.say("custody." + std::string(record::word_of(step.certainty))));
  }
  if (step.held != record::Held::both) {
    add(", " + telling.words.say("held." + std::string(record::word_of(step.held))));
  }
  if (!step.how.empty()) {
    add(", ");
    for (auto& part : telling.text(step.how).parts)
      text.parts.push_back(std::move(part));
  }
  if (step.from && step.until) {
    add(", " +
        telling.words.say("custody.from-until", {{"from", telling.words.date(*step.from)},
                                                 {"until", telling.words.date(*step.until)}}));
  } else if (step.from) {
    add(", " + telling.words.say("custody.from", {{"from", telling.words.date(*step.from)}}));
  }
  return text;
}

document::Text gap_words(const Telling& telling, const CustodyGap& gap) {
  document::Text text = document::plain(telling.words.say("custody.gap-open"));
  if (gap.from && gap.until) {
    text.parts.emplace_back(document::Run{telling.words.say(
        "custody.gap-dates",
        {{"from", telling.words.date(*gap.from)}, {"until", telling.words.date(*gap.until)}})});
  }
  for (auto& part : telling.text(gap.what).parts)
    text.parts.push_back(std::move(part));
  text.parts.emplace_back(document::Run{telling.words.say("custody.gap-close")});
  return text;
}

/// The provenance in one paragraph: a semicolon hands on directly, a full stop says we do not know
/// what came between.
document::Text told(const Telling& telling, std::vector<document::Text>& notes) {
  document::Text out;
  const auto& custody = telling.record.custody;
  for (std::size_t i = 0; i < custody.size(); ++i) {
    const auto* step = std::get_if<CustodyStep>(&custody[i]);
    document::Text words = step != nullptr ? step_words(telling, *step)
                                           : gap_words(telling, std::get<CustodyGap>(custody[i]));
    for (auto& part : words.parts)
      out.parts.push_back(std::move(part));
    const bool last = i + 1 == custody.size();
    const bool direct =
        !last && step != nullptr && std::holds_alternative<CustodyStep>(custody[i + 1]);
    out.parts.emplace_back(document::Run{direct ? ";" : "."});
    if (step != nullptr && !step->source.empty()) {
      notes.push_back(document::plain(step->source));
      out.parts.emplace_back(document::NoteMark{static_cast<int>(notes.size())});
    }
    if (!last) out.parts.emplace_back(document::Run{" "});
  }
  return out;
}

}  // namespace

std::optional<document::Chapter> tell_custody(const Telling& telling) {
  if (telling.record.custody.empty()) return std::nullopt;
  document::Chapter chapter = telling.chapter("custody");
  document::Notes notes;
  document::Paragraph paragraph{told(telling, notes.notes)};
  paragraph.beside.emplace_back(document::SideNote{document::with_lead(
      telling.words.say("custody.how-to-read"), telling.words.say("custody.key"))});
  chapter.blocks.emplace_back(std::move(paragraph));
  const std::string from = telling.words.date(telling.visit.taken_in);
  const std::string held =
      telling.visit.hand_back
          ? telling.words.say("custody.bench",
                              {{"bench", telling.record.bench.name},
                               {"from", from},
                               {"until", telling.words.date(telling.visit.hand_back->on)}})
          : telling.words.say("custody.still-here",
                              {{"bench", telling.record.bench.name}, {"from", from}});
  chapter.blocks.emplace_back(telling.sentence(held));
  if (!notes.notes.empty()) chapter.blocks.emplace_back(std::move(notes));
  return chapter;
}

}  // namespace winchbook::report
