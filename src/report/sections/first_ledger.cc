#include <algorithm>
#include <array>
#include <utility>

#include "record/enum_words.h"
#include "report/ledger_words.h"
#include "report/originality_chart.h"
#include "report/sections.h"
#include "report/table_columns.h"
#include "report/told.h"

namespace winchbook::report {
namespace {

using assess::originality::Finding;
using assess::originality::PieceRow;
using assess::originality::Standing;
using document::Cell;
using document::Text;

/// Over this many rows the ledger of a keepsake tells only what is not plainly original.
constexpr std::size_t kRowsToTellAll = 60;

Text same(const Telling& telling) {
  Text text;
  text.parts.emplace_back(document::Run{.text = telling.words.say("the-same"), .italic = true});
  return text;
}

document::Row ledger_row(const Telling& telling, const PieceRow& row) {
  const std::string surface_found = surface_words(telling, row.found);
  const std::string surface_left = surface_words(telling, row.left);
  const bool same_standing = !row.changed && row.found.standing == row.left.standing;
  document::Row out;
  out.anchor = "row-" + std::to_string(row.number);
  out.cells.push_back({document::plain(std::to_string(row.number))});
  out.cells.push_back({document::plain(row_name(telling, row))});
  Text found = standing_words(telling, row.found.standing, false);
  if (const auto* suspect = suspect_of(telling, row)) add_proposal(telling, *suspect, found);
  out.cells.push_back({std::move(found)});
  out.cells.push_back(
      {same_standing ? same(telling) : standing_words(telling, row.left.standing, true)});
  out.cells.push_back({document::plain(surface_found)});
  const bool same_surface = row.left.makers_surface && surface_left == surface_found;
  out.cells.push_back({same_surface ? same(telling) : document::plain(surface_left)});
  Text letter;
  if (row.letter) {
    letter.parts.emplace_back(document::Run{.text = *row.letter, .link = "#entry-" + *row.letter});
  }
  out.cells.push_back({std::move(letter)});
  return out;
}

/// A row that a long ledger may leave out: the maker's, the same as found, nothing open, and no
/// fiftieth of the whole by its weight.
bool plainly_original(const PieceRow& row) {
  const base::Ratio heavy(1, 50);
  return row.found.standing == Standing::original && row.left.standing == Standing::original &&
         !row.changed && !row.letter && row.weight < heavy;
}

/// A second line of head over the first, which a small job's table makes do without.
document::Row group_heads(const Telling& telling) {
  const auto over_two = [&](const char* key) {
    return Cell{document::plain(telling.words.say(key)), 2};
  };
  return {{Cell{}, Cell{}, over_two("ledger.the-part"), over_two("ledger.its-surface"), Cell{}}};
}

/// A small job has no chapter of marks: they are told in a line.
Text marks_read(const Telling& telling) {
  std::vector<std::string> marks;
  for (const record::Marking& mark : telling.record.markings) {
    const std::string* text = record::told(mark.text);
    if (text == nullptr) continue;
    std::string line = *text;
    std::replace(line.begin(), line.end(), '\n', ' ');
    marks.push_back(telling.words.say("mark.quoted", {{"text", line}}));
  }
  if (marks.empty()) return {};
  return document::plain(
      telling.words.say("ledger.marks-read", {{"marks", telling.words.list(marks)}}));
}

document::Table ledger(const Telling& telling, const Finding& finding, bool small) {
  using Align = document::Column::Align;
  document::Table table =
      table_of(telling, {{"ledger.number", {Align::numbers, 21}},
                         {"ledger.part", {Align::words, 105, true}},
                         {small ? "ledger.part-found" : "as-found", {Align::words, 105}},
                         {"as-left", {Align::words, 108}},
                         {small ? "ledger.surface-found" : "as-found", {Align::words, 66}},
                         {"as-left", {Align::words, 51}},
                         {"ledger.letter", {Align::numbers, 15}}});
  if (!small) table.head.insert(table.head.begin(), group_heads(telling));
  const bool all = finding.rows.size() <= kRowsToTellAll;
  std::size_t untold = 0;
  std::string assembly;
  for (const PieceRow& row : finding.rows) {
    if (!all && plainly_original(row) && suspect_of(telling, row) == nullptr) {
      ++untold;
      continue;
    }
    if (!all && row.assembly != assembly) start_assembly(telling, row.assembly, table);
    assembly = row.assembly;
    table.rows.push_back(ledger_row(telling, row));
  }
  table.below = small ? marks_read(telling) : key_to_signs(telling);
  if (untold > 0) {
    table.below.parts.emplace_back(
        document::Run{" " + telling.words.say("ledger.and-more", {{"count", untold}})});
  }
  if (const std::string reasons = proposals(telling); !reasons.empty()) {
    if (!table.below.parts.empty()) table.below.parts.emplace_back(document::LineEnd{});
    table.below.parts.emplace_back(document::Run{reasons});
  }
  table.summary = telling.words.say("ledger.summary");
  return table;
}

/// The answer and the table; the chart only where there is room for it.
std::optional<document::Chapter> ledger_chapter(const Telling& telling, bool with_chart) {
  document::Chapter chapter = telling.chapter("first-ledger");
  chapter.ledger = document::Ledger::first;
  if (!says_anything_of_parts(telling)) return std::nullopt;
  const Finding& finding = telling.assessment.last()->originality;
  chapter.stand_first = ledger_answer(telling, finding);
  chapter.tells = told_counts(finding);
  auto figure = with_chart ? originality_chart(telling, finding) : std::nullopt;
  if (figure) chapter.blocks.emplace_back(std::move(*figure)).tells = told_chart(finding);
  document::Table table = ledger(telling, finding, !with_chart);
  if (table.rows.empty()) {
    chapter.blocks.emplace_back(telling.sentence(
        telling.words.say("ledger.nothing-to-list", {{"count", finding.rows.size()}})));
  } else {
    FactList& told = chapter.blocks.emplace_back(std::move(table)).tells;
    for (const PieceRow& row : finding.rows)
      for (document::Fact& fact : told_standing(row))
        told.push_back(std::move(fact));
  }
  return chapter;
}

}  // namespace

std::optional<document::Chapter> tell_parts(const Telling& telling) {
  return ledger_chapter(telling, /*with_chart=*/false);
}

std::optional<document::Chapter> tell_first_ledger(const Telling& telling) {
  auto chapter = ledger_chapter(telling, /*with_chart=*/true);
  if (chapter) chapter->starts_page = true;
  return chapter;
}

}  // namespace winchbook::report
