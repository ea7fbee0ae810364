#include <utility>

#include "report/dating_words.h"
#include "report/marks_table.h"
#include "report/statement.h"
#include "report/table_columns.h"

namespace winchbook::report {
namespace {

namespace dating = assess::dating;
using document::Run;
using document::Table;
using document::Text;
using Align = document::Column::Align;

/// "1947, hard"; the day where the end is not that of a year.
std::string end_words(const Telling& telling, const std::optional<dating::End>& end,
                      const base::Day& whole_year) {
  if (!end) return telling.words.say("statement.no-end");
  const bool whole = end->day.month == whole_year.month && end->day.day == whole_year.day;
  const std::string date = whole ? std::to_string(end->day.year) : telling.words.day(end->day);
  const bool hard = end->firmness == record::EndFirmness::hard;
  return telling.words.say(hard ? "dating.hard-end" : "dating.soft-end", {{"date", date}});
}

void add_ends(const Telling& telling, const dating::Evidence* evidence, document::Row& row) {
  const std::optional<dating::End> none;
  const auto& first = evidence != nullptr ? evidence->not_before : none;
  const auto& last = evidence != nullptr ? evidence->not_after : none;
  row.cells.push_back({document::plain(end_words(telling, first, {0, 1, 1}))});
  row.cells.push_back({document::plain(end_words(telling, last, {0, 12, 31}))});
}

/// The reason, then in italics what it did to the answer or why it does not count.
Text because(const Telling& telling, std::size_t i) {
  Text text = evidence_because(telling, telling.assessment.dating.evidence[i]);
  std::string did = what_it_did(telling, i);
  if (const std::string why = why_left_out(telling, i); !why.empty() && !did.empty())
    did = telling.words.say("dating.left-out", {{"why", why}});
  if (did.empty()) return text;
  const std::string space = text.empty() ? "" : " ";
  text.parts.emplace_back(
      Run{.text = space + telling.words.capitalised(did) + ".", .italic = true});
  return text;
}

/// The number of the photograph that shows it, when it is printed here.
std::string shown(const Telling& telling, const record::Marking& mark) {
  for (const record::PhotoId& photo : mark.photos) {
    if (const int number = telling.pictures.number(photo); number > 0)
      return telling.words.say("figure.reference", {{"number", std::to_string(number)}});
  }
  return "";
}

/// "tail plate, inside; moulded, the maker's; worn; figure 3"
std::string where(const Telling& telling, const record::Marking& mark) {
  const std::string place =
      telling.words.joined("join.comma", {telling.piece_name(mark.piece), mark.where});
  const std::string state =
      telling.words.say("mark-state." + std::string(record::word_of(mark.state)));
  const std::string whole = telling.words.say(
      "statement.mark-where",
      {{"where", place},
       {"method", telling.words.say("method." + std::string(record::word_of(mark.method)))},
       {"whose", telling.words.say("whose." + std::string(record::word_of(mark.whose)))}});
  return telling.words.joined(
      "join.semicolon", {telling.words.joined("join.comma", {whole, state}), shown(telling, mark)});
}

std::string legible(const Telling& telling, const record::Marking& mark) {
  return telling.words.say("legible." + std::string(record::word_of(mark.legibility)));
}

void add_marks(const Telling& telling, Table& table) {
  const auto by_mark = evidence_by_mark(telling);
  const auto& marks = telling.record.markings;
  for (std::size_t i = 0; i < marks.size(); ++i) {
    const auto at = by_mark.find(marks[i].id);
    const bool dated = at != by_mark.end();
    document::Row row;
    row.anchor = "mark-" + mark_letter(i);
    row.cells.push_back({document::plain(mark_letter(i))});
    row.cells.push_back({quoted_whole(telling, marks[i])});
    row.cells.push_back({document::plain(where(telling, marks[i]))});
    row.cells.push_back({document::plain(legible(telling, marks[i]))});
    add_ends(telling, dated ? &telling.assessment.dating.evidence[at->second] : nullptr, row);
    row.cells.push_back({dated ? because(telling, at->second) : telling.text(marks[i].note)});
    table.rows.push_back(std::move(row));
  }
}

/// Materials, fasteners and statements that narrowed the years.
void add_other_evidence(const Telling& telling, Table& table) {
  const dating::Finding& finding = telling.assessment.dating;
  for (std::size_t i = 0; i < finding.evidence.size(); ++i) {
    const dating::Evidence& evidence = finding.evidence[i];
    if (evidence.marking || !narrows(finding, i)) continue;
    document::Row row;
    row.cells.push_back({Text{}});
    row.cells.push_back({document::plain(evidence_name(telling, evidence))});
    row.cells.push_back({document::plain(
        telling.words.say(evidence.piece.empty() ? "statement.the-reel" : "statement.no-mark"))});
    row.cells.push_back({Text{}});
    add_ends(telling, &evidence, row);
    row.cells.push_back({because(telling, i)});
    table.rows.push_back(std::move(row));
  }
}

std::string years(const Telling& telling, const dating::YearRange& range) {
  if (range.first == range.last) return std::to_string(range.first);
  return telling.words.say("dating.window", {{"first", std::to_string(range.first)},
                                             {"last", std::to_string(range.last)}});
}

/// The answer of all marks together, how likely, and the doubts.
std::string together(const Telling& telling) {
  const dating::Finding& finding = telling.assessment.dating;
  std::vector<std::string> said{dating_answer(telling)};
  if (finding.range50) {
    said.push_back(telling.words.say(
        "statement.likely",
        {{"years",
          telling.words.say("dating.half", {{"years", years(telling, *finding.range50)}})}}));
  }
  if (finding.range90) {
    said.push_back(telling.words.say(
        "statement.likely",
        {{"years", telling.words.say("dating.nine-tenths",
                                     {{"years", years(telling, *finding.range90)}})}}));
  }
  for (const std::string& doubt : dating_doubts(telling))
    said.push_back(doubt);
  said.push_back(telling.words.say("statement.hard-and-soft"));
  return joined(said);
}

}  // namespace

void add_statement_marks(const Telling& telling, document::Chapter& chapter) {
  Table table = table_of(telling, {{"ledger.number", {Align::words, 14}},
                                   {"statement.as-read", {Align::words, 98, true}},
                                   {"dating.where", {Align::words, 96}},
                                   {"statement.legible", {Align::words, 44}},
                                   {"statement.not-before", {Align::words, 53}},
                                   {"statement.not-after", {Align::words, 53}},
                                   {"statement.because", {Align::words, 113}}});
  add_marks(telling, table);
  add_other_evidence(telling, table);
  if (table.rows.empty()) {
    const std::string none = telling.words.say("dating.no-marks");
    if (none.empty()) return;
    chapter.blocks.emplace_back(ruled_subhead(telling, "statement.marks"));
    chapter.blocks.emplace_back(note_paragraph(none));
    return;
  }
  table.below = document::plain(together(telling));
  table.summary = telling.words.say("dating.table-summary");
  chapter.blocks.emplace_back(ruled_subhead(telling, "statement.marks"));
  chapter.blocks.emplace_back(std::move(table));
}

}  // namespace winchbook::report
