#include <utility>

#include "report/courses_chart.h"
#include "report/sections.h"
#include "report/table_columns.h"
#include "report/told.h"

namespace winchbook::report {
namespace {

std::string course(const Telling& telling, record::Course which) {
  return telling.words.say("course." + std::string(record::word_of(which)));
}

std::string stand_first(const Telling& telling, const record::Advice& advice) {
  std::vector<std::string> sentences;
  if (advice.advised) {
    sentences.push_back(telling.words.say(
        "advice.advised",
        {{"course", telling.words.capitalised(course(telling, *advice.advised))}}));
  }
  if (advice.chosen) {
    const bool same = advice.advised == advice.chosen;
    sentences.push_back(telling.words.say(same ? "advice.chosen-the-same" : "advice.chosen-other",
                                          {{"course", course(telling, *advice.chosen)}}));
  }
  return joined(sentences);
}

std::string cost_words(const Telling& telling, const record::CourseCost& cost) {
  const base::Decimal nothing(0, 0);
  const auto& most = cost.high ? cost.high : cost.low;
  if (most && most->amount == nothing) return telling.words.say("advice.nothing");
  if (cost.low && cost.high && !(*cost.low == *cost.high)) {
    return telling.words.say("range", {{"low", telling.words.money(*cost.low)},
                                       {"high", telling.words.money(*cost.high)}});
  }
  if (cost.low) return telling.words.money(*cost.low);
  if (cost.high)
    return telling.words.say("advice.up-to", {{"cost", telling.words.money(*cost.high)}});
  return "";
}

document::Table courses(const Telling& telling, const record::Advice& advice) {
  using Align = document::Column::Align;
  document::Table table = table_of(telling, {{"advice.course", {Align::words, 84, true}},
                                             {"advice.cost", {Align::words, 90}},
                                             {"advice.effect", {Align::words, 0}}});
  table.width = document::Width::main;
  for (const record::CourseCost& one : advice.courses) {
    document::Row row;
    document::Text name;
    name.parts.emplace_back(
        document::Run{.text = telling.words.capitalised(course(telling, one.course)),
                      .bold = advice.chosen == one.course});
    row.cells = {
        {std::move(name)}, {document::plain(cost_words(telling, one))}, {telling.text(one.effect)}};
    table.rows.push_back(std::move(row));
  }
  table.summary = telling.words.say("advice.summary");
  return table;
}

std::vector<document::Beside> ranking(const Telling& telling) {
  std::vector<std::string> matters;
  for (const record::Matter matter : telling.visit.wishes.ranking) {
    matters.push_back(telling.words.say("matter." + std::string(record::word_of(matter))));
  }
  std::vector<document::Beside> notes;
  if (!matters.empty()) {
    notes.emplace_back(document::SideNote{document::with_lead(
        telling.words.say("advice.ranked"),
        telling.words.say("advice.ranked-list", {{"list", telling.words.list(matters)}}))});
  }
  notes.emplace_back(
      document::SideNote{document::plain(telling.words.say("advice.owner-decides"))});
  return notes;
}

std::string decision(const Telling& telling, const record::Advice& advice) {
  if (!advice.chosen || !advice.chosen_by || !advice.chosen_on) return "";
  return telling.words.say("advice.decision",
                           {{"name", telling.words.capitalised(telling.name(*advice.chosen_by))},
                            {"course", course(telling, *advice.chosen)},
                            {"date", telling.words.date(*advice.chosen_on)}});
}

}  // namespace

std::optional<document::Chapter> tell_advice(const Telling& telling) {
  if (!telling.visit.advice) return std::nullopt;
  const record::Advice& advice = *telling.visit.advice;
  document::Chapter chapter = telling.chapter("advice");
  if (advice.chosen_on) {
    chapter.eyebrow = telling.words.say("advice.eyebrow-dated",
                                        {{"date", telling.words.date(*advice.chosen_on)}});
    chapter.eyebrow_continued =
        telling.words.say("chapter.continued", {{"eyebrow", chapter.eyebrow}});
  }
  chapter.stand_first = stand_first(telling, advice);
  if (advice.advised) chapter.tells.push_back(told_course("advice:advised", advice.advised));
  if (advice.chosen) chapter.tells.push_back(told_course("advice:chosen", advice.chosen));
  document::Paragraph because = telling.paragraph(advice.because);
  because.beside = ranking(telling);
  if (!because.words.empty()) chapter.blocks.emplace_back(std::move(because));
  if (!advice.courses.empty()) chapter.blocks.emplace_back(courses(telling, advice));
  document::Text decided = document::plain(decision(telling, advice));
  if (!advice.chosen_because.empty()) {
    if (!decided.empty()) decided.parts.emplace_back(document::Run{" "});
    append(decided, telling.text(advice.chosen_because));
  }
  if (!decided.empty()) chapter.blocks.emplace_back(document::Paragraph{std::move(decided)});
  if (chapter.stand_first.empty() && chapter.blocks.empty()) return std::nullopt;
  add_weighed_courses(telling, chapter);
  return chapter;
}

}  // namespace winchbook::report
