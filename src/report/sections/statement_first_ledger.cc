#include <algorithm>
#include <utility>

#include "report/ledger_words.h"
#include "report/sections.h"
#include "report/statement.h"
#include "report/table_columns.h"
#include "report/told.h"

namespace winchbook::report {
namespace {

using assess::originality::Finding;
using assess::originality::PieceRow;
using assess::originality::Reason;
using assess::originality::Standing;
using document::LineEnd;
using document::Run;
using document::Table;
using document::Text;
using Align = document::Column::Align;

/// Over this many rows the ledger goes by assembly.
constexpr std::size_t kRowsInOne = 60;

/// The part, and in italics what it is made of.
Text part(const Telling& telling, const PieceRow& row) {
  Text text = document::plain(row_name(telling, row));
  const record::PieceId* id = row.found.piece  ? &*row.found.piece
                              : row.left.piece ? &*row.left.piece
                                               : nullptr;
  const record::Piece* piece = id == nullptr ? nullptr : find(telling.record, *id);
  if (piece != nullptr && !piece->material.empty()) {
    text.parts.emplace_back(Run{telling.words.say("join.comma", {{"before", ""}, {"next", ""}})});
    text.parts.emplace_back(Run{.text = piece->material, .italic = true});
  }
  return text;
}

/// Tenths of a hundredth of the whole; a dash for what is not weighed.
std::string weight(const Telling& telling, const PieceRow& row) {
  if (!row.weighed) return telling.words.say("statement.not-weighed");
  return telling.words.number(base::Decimal(row.weight.rounded(1000), 1));
}

Text standing(const Telling& telling, const PieceRow& row) {
  Text text = standing_words(telling, row.found.standing, false);
  if (const auto* suspect = suspect_of(telling, row)) add_proposal(telling, *suspect, text);
  if (row.changed || row.found.standing != row.left.standing) {
    text.parts.emplace_back(LineEnd{});
    append(text, standing_words(telling, row.left.standing, true));
  }
  return text;
}

std::string surface(const Telling& telling, const PieceRow& row) {
  std::string found = surface_words(telling, row.found);
  const std::string left = surface_words(telling, row.left);
  if (found == left) return found;
  return telling.words.say("statement.from-to", {{"found", found}, {"left", left}});
}

bool has(const std::vector<Reason>& reasons, Reason reason) {
  return std::find(reasons.begin(), reasons.end(), reason) != reasons.end();
}

/// How sure it is whose the part found was, and because of what.
Text evidence(const Telling& telling, const PieceRow& row) {
  const record::Piece* piece = row.found.piece ? find(telling.record, *row.found.piece) : nullptr;
  Text text;
  if (piece != nullptr && row.found.standing != Standing::not_determined) {
    text = document::plain(
        telling.words.capitalised(how_sure(telling, piece->of_this_reel.certainty)) + ".");
  } else if (has(row.found.reasons, Reason::place_not_examined)) {
    return document::plain(telling.words.say("statement.place-not-examined"));
  } else if (piece == nullptr && row.found.standing == Standing::missing) {
    text = document::plain(telling.words.say("statement.place-empty"));
  } else if (piece == nullptr && row.found.standing == Standing::left_empty) {
    return document::plain(telling.words.say("statement.left-empty"));
  }
  record::Evidence evidence = row.evidence;
  for (const record::MarkingId& mark : row.marks) {
    if (std::find(evidence.markings.begin(), evidence.markings.end(), mark) ==
        evidence.markings.end())
      evidence.markings.push_back(mark);
  }
  Text why = grounds(telling, evidence);
  if (!text.empty() && !why.empty()) text.parts.emplace_back(Run{" "});
  append(text, std::move(why));
  return text;
}

document::Row row_of(const Telling& telling, const PieceRow& row) {
  document::Row out;
  out.anchor = "row-" + std::to_string(row.number);
  Text letter;
  if (row.letter)
    letter.parts.emplace_back(
        Run{.text = *row.letter, .bold = true, .link = "#entry-" + *row.letter});
  out.cells = {{document::plain(std::to_string(row.number))},
               {part(telling, row)},
               {document::plain(weight(telling, row))},
               {standing(telling, row)},
               {document::plain(surface(telling, row))},
               {evidence(telling, row)},
               {std::move(letter)}};
  return out;
}

Table ledger(const Telling& telling, const Finding& finding) {
  Table table = table_of(telling, {{"ledger.number", {Align::numbers, 19}},
                                   {"statement.part", {Align::words, 96, true}},
                                   {"statement.weight-head", {Align::numbers, 36}},
                                   {"statement.standing", {Align::words, 92}},
                                   {"statement.surface", {Align::words, 74}},
                                   {"statement.evidence", {Align::words, 139}},
                                   {"ledger.letter", {Align::numbers, 15}}});
  const bool by_assembly = finding.rows.size() > kRowsInOne;
  std::string assembly;
  for (const PieceRow& row : finding.rows) {
    if (by_assembly && (table.rows.empty() || row.assembly != assembly))
      start_assembly(telling, row.assembly, table);
    assembly = row.assembly;
    table.rows.push_back(row_of(telling, row));
  }
  table.below = key_to_signs(telling);
  table.below.parts.emplace_back(Run{" " + telling.words.say("statement.weights")});
  if (const std::string reasons = proposals(telling); !reasons.empty())
    table.below.parts.emplace_back(Run{" " + reasons});
  table.summary = telling.words.say("statement.ledger-summary");
  return table;
}

}  // namespace

std::optional<document::Chapter> tell_statement_first_ledger(const Telling& telling) {
  document::Chapter chapter = telling.chapter("first-ledger");
  chapter.id = "statement-first-ledger";
  chapter.ledger = document::Ledger::first;
  chapter.starts_page = true;
  if (!says_anything_of_parts(telling)) return std::nullopt;
  const assess::VisitAssessment* last = telling.assessment.last();
  chapter.stand_first = ledger_answer(telling, last->originality);
  chapter.tells = told_counts(last->originality);
  FactList& told = chapter.blocks.emplace_back(ledger(telling, last->originality)).tells;
  for (const PieceRow& row : last->originality.rows)
    for (document::Fact& fact : told_standing(row))
      told.push_back(std::move(fact));
  return chapter;
}

}  // namespace winchbook::report
