#include <utility>

#include "report/condition_chart.h"
#include "report/dating_chart.h"
#include "report/ledger_words.h"
#include "report/originality_chart.h"
#include "report/sections.h"
#include "report/statement.h"
#include "report/table_columns.h"
#include "report/told.h"

namespace winchbook::report {
namespace {

using assess::condition::kStateAxes;
using assess::condition::Readings;
using assess::condition::StateAxis;
using assess::condition::WordRange;
using assess::originality::Finding;
using document::Tally;
using Share = std::optional<base::RatioRange>;

std::string share(const Telling& telling, const Share& share) {
  return share ? telling.hundredths(*share) : telling.words.say("statement.no-figure");
}

Tally::Figure of_hundred(const Telling& telling, const std::string& key, const Share& found,
                         const Share& left) {
  return {telling.words.say(key), share(telling, found), share(telling, left),
          telling.words.say(key + "-is")};
}

Tally originality(const Telling& telling, const Finding& finding) {
  Tally tally;
  tally.figures.push_back(
      of_hundred(telling, "statement.parts", finding.original.found, finding.original.left));
  tally.figures.push_back(of_hundred(telling, "statement.surfaces", finding.untouched_surface.found,
                                     finding.untouched_surface.left));
  tally.figures.push_back(of_hundred(telling, "statement.right", finding.right_for_model.found,
                                     finding.right_for_model.left));
  tally.figures.push_back(of_hundred(telling, "statement.back", finding.original.found,
                                     finding.way_back.original_restored));
  return tally;
}

std::string word(const Telling& telling, const StateAxis& axis, const WordRange& range) {
  const auto say = [&](int at) {
    return telling.words.say("condition." + std::string(axis.name) + "." +
                             std::string(axis.words.at(static_cast<std::size_t>(at))));
  };
  if (range.best == range.worst) return say(range.best);
  return telling.words.say("range", {{"low", say(range.worst)}, {"high", say(range.best)}});
}

WordRange range_of(const Readings& at, std::size_t axis) {
  switch (axis) {
    case 0:
      return at.finish_left.word;
    case 1:
      return at.structure.word;
    case 2:
      return at.working.word;
    default:
      return at.completeness.word;
  }
}

Tally condition(const Telling& telling, const assess::condition::Finding& finding) {
  Tally tally;
  for (std::size_t i = 0; i < kStateAxes.size(); ++i) {
    if (!is_examined(finding, i)) continue;
    const std::string key = "condition." + std::string(kStateAxes[i].name);
    tally.figures.push_back({telling.words.say(key),
                             word(telling, kStateAxes[i], range_of(finding.found, i)),
                             word(telling, kStateAxes[i], range_of(finding.left, i)),
                             telling.words.say(key + ".what")});
  }
  return tally;
}

/// "change in parts, by cause": which row gave or took how much.
std::optional<document::Table> changes(const Telling& telling, const Finding& finding) {
  using Align = document::Column::Align;
  constexpr std::int64_t kTenths = 1000;
  document::Table table = table_of(telling, {{"statement.change", {Align::words, 0, true}},
                                             {nullptr, {Align::words, 20}},
                                             {"statement.points", {Align::numbers, 66}}});
  const auto signed_tenths = [&](std::int64_t tenths) {
    const std::string digits =
        telling.words.number(base::Decimal(tenths < 0 ? -tenths : tenths, 1));
    return tenths < 0 ? "\u2212" + digits : tenths > 0 ? "+" + digits : digits;
  };
  for (const auto& share :
       assess::originality::printed(finding.original, finding.original_change, kTenths)) {
    const auto& row = finding.rows.at(static_cast<std::size_t>(share.row) - 1);
    const std::string low = signed_tenths(share.low);
    const std::string high = signed_tenths(share.high);
    table.rows.push_back(
        {{{document::plain(row_name(telling, row))},
          {document::plain(row.letter.value_or(""))},
          {document::plain(
              low == high ? low : telling.words.say("range", {{"low", low}, {"high", high}}))}}});
  }
  if (table.rows.empty()) return std::nullopt;
  table.summary = telling.words.say("statement.change-summary");
  return table;
}

void add_originality(const Telling& telling, const Finding& finding, document::Chapter& chapter) {
  auto figure = originality_chart(telling, finding);
  if (!figure) return;
  chapter.blocks.emplace_back(ruled_subhead(telling, "statement.originality"));
  chapter.blocks.emplace_back(std::move(*figure)).tells = told_chart(finding);
  // The chart wants the whole width; its causes are few and short.
  if (auto table = changes(telling, finding)) {
    chapter.blocks.emplace_back(document::Halves{{std::move(*table)}, {}});
  }
}

}  // namespace

void add_statement_figures(const Telling& telling, document::Chapter& chapter) {
  const assess::VisitAssessment* last = telling.assessment.last();
  if (last == nullptr) return;
  Tally parts = originality(telling, last->originality);
  Tally state = condition(telling, last->condition);
  if (state.figures.empty() && !says_anything_of_parts(telling)) return;
  for (Tally* tally : {&parts, &state}) {
    tally->width = document::Width::full;
    tally->found_spoken = telling.words.say("statement.found-spoken");
    tally->left_spoken = telling.words.say("statement.left-spoken");
  }
  auto& below = state.below.parts;
  below.emplace_back(document::SignRun{document::Sign::found});
  below.emplace_back(document::Run{telling.words.say("as-found") + "   "});
  below.emplace_back(document::SignRun{document::Sign::left});
  below.emplace_back(document::Run{telling.words.say("as-left") + "   "});
  below.emplace_back(document::Run{.text = telling.words.say("statement.no-total"), .bold = true});
  FactList whose;
  const Finding& answer = last->originality;
  for (const auto& [id, index] : {std::pair{"original", &answer.original},
                                  std::pair{"untouched_surface", &answer.untouched_surface},
                                  std::pair{"right_for_model", &answer.right_for_model}}) {
    for (document::Fact& fact : told_index(id, *index))
      whose.push_back(std::move(fact));
  }
  whose.push_back(told_share("original.restored", answer.way_back.original_restored));
  if (says_anything_of_parts(telling))
    chapter.blocks.emplace_back(std::move(parts)).tells = std::move(whose);
  if (state.figures.empty()) return;
  FactList& how = chapter.blocks.emplace_back(std::move(state)).tells;
  for (std::size_t i = 0; i < kStateAxes.size(); ++i) {
    if (!is_examined(last->condition, i)) continue;
    how.push_back(told_state(i, "found", range_of(last->condition.found, i)));
    how.push_back(told_state(i, "left", range_of(last->condition.left, i)));
  }
}

std::optional<document::Chapter> tell_statement_figures(const Telling& telling) {
  document::Chapter chapter = telling.chapter("statement-figures");
  chapter.stand_first = telling.words.say("statement-figures.answer");
  if (auto figure = dating_chart(telling)) {
    chapter.blocks.emplace_back(ruled_subhead(telling, "statement.dating"));
    chapter.blocks.emplace_back(std::move(*figure)).tells = told_dating(telling.assessment.dating);
    if (const std::size_t more = marks_not_drawn(telling); more > 0) {
      chapter.blocks.emplace_back(
          note_paragraph(telling.words.say("dating.not-drawn", {{"count", more}})));
    }
  }
  const assess::VisitAssessment* last = telling.assessment.last();
  if (last != nullptr && says_anything_of_parts(telling))
    add_originality(telling, last->originality, chapter);
  if (auto figure = condition_chart(telling)) {
    chapter.blocks.emplace_back(ruled_subhead(telling, "statement.condition"));
    chapter.blocks.emplace_back(std::move(*figure));
  }
  if (chapter.blocks.empty()) return std::nullopt;
  return chapter;
}

}  // namespace winchbook::report
