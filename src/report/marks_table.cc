#include "report/marks_table.h"

#include <algorithm>
#include <map>
#include <utility>

#include "report/dating_words.h"
#include "report/table_columns.h"

namespace winchbook::report {
namespace {

using document::Table;
using record::Marking;
using Align = document::Column::Align;

/// A mark on a piece that this bench put in says nothing of the reel that came.
bool put_in_by_bench(const Telling& telling, const Marking& mark) {
  return std::any_of(telling.record.fittings.begin(), telling.record.fittings.end(),
                     [&](const record::Fitting& fitting) {
                       return fitting.piece == mark.piece &&
                              std::holds_alternative<record::ByBench>(fitting.by);
                     });
}

/// The reason, and in italics what it did to the answer.
document::Text reason(const Telling& telling, std::size_t i) {
  document::Text text = evidence_because(telling, telling.assessment.dating.evidence[i]);
  const std::string did = what_it_did(telling, i);
  if (did.empty()) return text;
  const std::string space = text.empty() ? "" : " ";
  text.parts.emplace_back(
      document::Run{.text = space + telling.words.capitalised(did) + ".", .italic = true});
  return text;
}

document::Row row_of(const Telling& telling, const Marking& mark, std::optional<std::size_t> i) {
  std::string where =
      telling.words.joined("join.comma", {telling.piece_name(mark.piece), mark.where});
  const std::string whose = "whose." + std::string(record::word_of(mark.whose));
  document::Row row;
  row.cells.push_back({quoted_whole(telling, mark)});
  row.cells.push_back({document::plain(std::move(where))});
  row.cells.push_back({document::plain(telling.words.say(whose))});
  row.cells.push_back({i ? reason(telling, *i) : telling.text(mark.note)});
  return row;
}

}  // namespace

std::map<record::MarkingId, std::size_t> evidence_by_mark(const Telling& telling) {
  std::map<record::MarkingId, std::size_t> by_mark;
  const auto& evidence = telling.assessment.dating.evidence;
  for (std::size_t i = 0; i < evidence.size(); ++i) {
    if (!evidence[i].marking) continue;
    const auto [at, fresh] = by_mark.try_emplace(*evidence[i].marking, i);
    const auto& told = evidence[at->second];
    if (!fresh && !told.not_before && !told.not_after) at->second = i;
  }
  return by_mark;
}

std::optional<Table> marks_table(const Telling& telling, MarksOf of) {
  Table table = table_of(telling, {{"dating.as-read", {Align::words, 132, true}},
                                   {"dating.where", {Align::words, 117}},
                                   {"dating.whose", {Align::words, 54}},
                                   {"dating.because", {Align::words, 150}}});
  table.dashed = of == MarksOf::bench;
  const auto by_mark = evidence_by_mark(telling);
  for (const Marking& mark : telling.record.markings) {
    if (put_in_by_bench(telling, mark) != (of == MarksOf::bench)) continue;
    const auto at = by_mark.find(mark.id);
    std::optional<std::size_t> evidence;
    if (at != by_mark.end()) evidence = at->second;
    table.rows.push_back(row_of(telling, mark, evidence));
  }
  if (table.rows.empty()) return std::nullopt;
  table.title = telling.words.say(of == MarksOf::bench ? "dating.marks-of-bench" : "dating.marks");
  table.summary = telling.words.say("dating.table-summary");
  return table;
}

std::optional<Table> other_evidence_table(const Telling& telling) {
  Table table = table_of(telling, {{"dating.what", {Align::words, 132, true}},
                                   {"dating.says", {Align::words, 171}},
                                   {"dating.because", {Align::words, 150}}});
  const auto& finding = telling.assessment.dating;
  for (std::size_t i = 0; i < finding.evidence.size(); ++i) {
    const auto& evidence = finding.evidence[i];
    if (evidence.marking || (!evidence.not_before && !evidence.not_after)) continue;
    if (finding.uses[i].left_out != assess::dating::LeftOut::no || !narrows(finding, i)) continue;
    assess::dating::DaySpan days;
    if (evidence.not_before) days.first = evidence.not_before->day;
    if (evidence.not_after) days.last = evidence.not_after->day;
    document::Row row;
    row.cells.push_back({document::plain(evidence_name(telling, evidence))});
    row.cells.push_back({document::plain(
        telling.words.say("dating.made-in", {{"years", years_in_words(telling, days)}}))});
    row.cells.push_back({reason(telling, i)});
    table.rows.push_back(std::move(row));
  }
  if (table.rows.empty()) return std::nullopt;
  table.title = telling.words.say("dating.other-evidence");
  table.summary = telling.words.say("dating.other-summary");
  return table;
}

}  // namespace winchbook::report
