#include <algorithm>
#include <utility>

#include "record/enum_words.h"
#include "report/bench_work.h"
#include "report/care_words.h"
#include "report/fitting_words.h"
#include "report/ledger_words.h"
#include "report/sections.h"
#include "report/statement.h"
#include "report/table_columns.h"

namespace winchbook::report {
namespace {

using assess::originality::Finding;
using assess::originality::Return;
using document::HalfBlock;
using document::LineEnd;
using document::Run;
using document::Table;
using document::Text;
using record::Fitting;
using Align = document::Column::Align;

/// "bore 6.35 mm, outside 25 mm, depth 3 mm"; empty when nothing was measured.
std::string seat_words(const Telling& telling, const std::optional<record::Seat>& seat) {
  if (!seat) return "";
  std::vector<std::string> sizes;
  const auto add = [&](const char* key, const std::optional<base::Millimetres>& size) {
    if (!size) return;
    sizes.push_back(telling.words.say(key, {{"size", telling.words.measure(size->value, "mm")}}));
  };
  add("seat.bore", seat->bore);
  add("seat.outside", seat->outside);
  add("seat.depth", seat->depth);
  std::string note = telling.plain(seat->note);
  if (sizes.empty()) return note;
  const std::string all = telling.words.joined("join.comma", sizes);
  return joined({telling.words.say("statement.seat", {{"sizes", all}}), note});
}

Text adapted(const Telling& telling, const Fitting& fitting) {
  Text text = telling.text(fitting.adaptation);
  if (fitting.reel_altered) {
    text.parts.emplace_back(Run{" "});
    text.parts.emplace_back(Run{.text = telling.words.say("statement.reel-altered"), .bold = true});
  }
  if (const std::string seat = seat_words(telling, fitting.seat); !seat.empty()) {
    text.parts.emplace_back(LineEnd{});
    text.parts.emplace_back(Run{seat});
  }
  return text;
}

/// The piece, and how many of it; the row of the first ledger it belongs to.
Text fitted(const Telling& telling, const Fitting& fitting, const Finding& finding) {
  const record::Piece* piece = find(telling.record, fitting.piece);
  std::string name = telling.piece_name(fitting.piece);
  if (piece != nullptr && piece->count > 1) {
    name = telling.words.say("ledger.name-and-count",
                             {{"name", name}, {"count", telling.words.spelled(piece->count)}});
  }
  Text text;
  text.parts.emplace_back(Run{.text = telling.words.capitalised(name), .bold = true});
  for (const auto& row : finding.rows) {
    if (row.fitting != fitting.id) continue;
    text.parts.emplace_back(LineEnd{});
    text.parts.emplace_back(
        Run{.text = telling.words.say("statement.row", {{"number", std::to_string(row.number)}}),
            .link = "#row-" + std::to_string(row.number)});
    break;
  }
  return text;
}

std::optional<Table> fittings(const Telling& telling, const Finding& finding) {
  if (finding.second_ledger.empty()) return std::nullopt;
  Table table = table_of(telling, {{"ledger.letter", {Align::words, 17}},
                                   {"statement.fitted", {Align::words, 66, true}},
                                   {"statement.donor", {Align::words, 76}},
                                   {"statement.why", {Align::words, 76}},
                                   {"statement.adapted", {Align::words, 92}},
                                   {"statement.way-back", {Align::words, 84}},
                                   {"statement.old-one", {Align::words, 60}}});
  table.dashed = true;
  for (const auto& entry : finding.second_ledger) {
    const Fitting* fitting = find(telling.record, entry.fitting);
    if (fitting == nullptr) continue;
    const record::Piece* piece = find(telling.record, fitting->piece);
    Text letter;
    letter.parts.emplace_back(Run{.text = entry.letter, .bold = true});
    Text why = telling.text(fitting->why);
    if (why.empty()) why = document::plain(telling.words.say("statement.not-written"));
    document::Row row;
    row.anchor = "entry-" + entry.letter;
    row.cells = {{std::move(letter)},
                 {fitted(telling, *fitting, finding)},
                 {document::plain(piece == nullptr ? "" : donor_words(telling, *piece))},
                 {std::move(why)},
                 {adapted(telling, *fitting)},
                 {fitting->way_back ? way_back_words(telling, *fitting->way_back)
                                    : document::plain(telling.words.say("statement.not-written"))},
                 {document::plain(old_piece_words(telling, *fitting))}};
    table.rows.push_back(std::move(row));
  }
  table.summary = telling.words.say("statement.fittings-summary");
  return table;
}

std::vector<HalfBlock> tests(const Telling& telling) {
  std::vector<HalfBlock> blocks;
  if (telling.visit.findings.tests.empty()) return blocks;
  blocks.emplace_back(ruled_subhead(telling, "statement.tests", true));
  Table table = tests_table(telling);
  table.title.clear();
  table.columns[1].width = 27;
  table.columns[2].width = table.columns[3].width = 51;
  blocks.emplace_back(std::move(table));
  return blocks;
}

void add(const Telling& telling, const char* lead, const record::Words& words, Text& text) {
  if (words.empty()) return;
  text.parts.emplace_back(Run{" "});
  if (lead != nullptr) text.parts.emplace_back(Run{telling.words.say(lead) + " "});
  append(text, telling.text(words));
}

/// What it was cleaned with and how, in the words of the record.
std::string method_of(const Telling& telling, const record::Cleaning& cleaning) {
  std::vector<std::string> parts{cleaning.method, cleaning.material};
  if (cleaning.minutes) {
    parts.push_back(telling.words.measure(cleaning.minutes->value, "min"));
  }
  std::string words = telling.words.joined("join.comma", parts);
  if (words.empty()) words = telling.words.say("bench.cleaned");
  return telling.words.capitalised(words) + ".";
}

void add_cleaning(const Telling& telling, std::vector<HalfBlock>& blocks) {
  for (const record::Cleaning& one : telling.visit.cleaning) {
    const std::string day =
        one.on
            ? telling.words.say("bench.on-day",
                                {{"date", telling.words.capitalised(telling.words.date(*one.on))}})
            : "";
    Text text = document::with_lead(joined({day, method_of(telling, one)}), "");
    add(telling, nullptr, one.what, text);
    add(telling, "statement.loss", one.loss, text);
    add(telling, "bench.against-warning", one.against_warning, text);
    if (one.way_back) {
      text.parts.emplace_back(Run{" " + telling.words.say("bench.way-back") + " "});
      append(text, way_back_words(telling, *one.way_back));
    }
    for (document::Caution& caution : cautions_beside(telling, one))
      blocks.emplace_back(std::move(caution));
    blocks.emplace_back(note_paragraph(std::move(text)));
  }
}

void add_work(const Telling& telling, std::vector<HalfBlock>& blocks) {
  for (const record::Work& one : telling.visit.work) {
    const std::string lead =
        one.on ? telling.words.say("statement.work-on", {{"date", telling.words.date(*one.on)}})
               : telling.words.say("statement.work");
    Text text = document::with_lead(lead, "");
    add(telling, nullptr, one.what, text);
    if (one.way_back) {
      text.parts.emplace_back(Run{" " + telling.words.say("bench.way-back") + " "});
      append(text, way_back_words(telling, *one.way_back));
    }
    for (document::Caution& caution : cautions_beside(telling, one))
      blocks.emplace_back(std::move(caution));
    blocks.emplace_back(note_paragraph(std::move(text)));
  }
}

std::vector<HalfBlock> treatment(const Telling& telling) {
  std::vector<HalfBlock> blocks;
  blocks.emplace_back(ruled_subhead(telling, "statement.treatment", true));
  const std::size_t none = blocks.size();
  add_cleaning(telling, blocks);
  add_work(telling, blocks);
  if (!telling.edition.unaccounted.empty()) {
    blocks.emplace_back(note_paragraph(
        telling.words.say("bench.unaccounted", {{"reason", telling.edition.unaccounted}})));
  }
  for (const record::Visit& visit : telling.record.visits) {
    if (visit.id == telling.visit.id || visit.summary.empty()) continue;
    Text text = document::with_lead(
        telling.words.say("statement.earlier", {{"date", telling.words.date(visit.taken_in)}}), "");
    add(telling, nullptr, visit.summary, text);
    blocks.emplace_back(note_paragraph(std::move(text)));
  }
  if (blocks.size() == none) blocks.clear();
  return blocks;
}

const char* outcome_key(const Return& one) {
  if (one.outcome == Return::Outcome::in_part) return "statement.return-in-part";
  if (one.outcome == Return::Outcome::not_determined) return "statement.return-not-known";
  if (one.outcome != Return::Outcome::never) return nullptr;
  switch (one.because) {
    case Return::Because::lost:
      return "statement.return-lost";
    case Return::Because::scrapped:
      return "statement.return-scrapped";
    case Return::Because::kept_by_bench:
      return "statement.return-kept";
    case Return::Because::whereabouts_not_known:
      return "statement.return-not-found";
    default:
      return "statement.return-never";
  }
}

/// What is in the bags, bag by bag, in one sentence.
std::string bagged(const Telling& telling) {
  std::vector<std::string> names;
  for (const record::Piece& piece : telling.record.pieces) {
    if (piece.now.kind != record::Whereabouts::Kind::bagged) continue;
    names.push_back(piece.now.bag.empty()
                        ? piece.name
                        : telling.words.say("statement.in-bag",
                                            {{"name", piece.name}, {"bag", piece.now.bag}}));
  }
  if (names.empty()) return "";
  return telling.words.say("statement.bagged", {{"names", telling.words.list(names)}});
}

std::vector<HalfBlock> way_back(const Telling& telling, const Finding& finding) {
  std::vector<HalfBlock> blocks;
  const auto& way = finding.way_back;
  if (way.returns.empty() && way.surface_losses.empty()) return blocks;
  blocks.emplace_back(ruled_subhead(telling, "statement.way-back-head", true));
  std::vector<std::string> answer;
  if (!way.returns.empty()) {
    answer.push_back(telling.words.say("statement.returns", {{"all", way.returns.size()},
                                                             {"fully", way.fully},
                                                             {"part", way.in_part},
                                                             {"never", way.never},
                                                             {"open", way.not_determined},
                                                             {"none", way.nothing_there}}));
  }
  if (way.original_restored) {
    answer.push_back(
        telling.words.say("ledger.refit", {{"share", telling.hundredths(*way.original_restored)}}));
  }
  if (way.untouched_surface_restored) {
    answer.push_back(
        telling.words.say("statement.surface-restored",
                          {{"share", telling.hundredths(*way.untouched_surface_restored)}}));
  }
  blocks.emplace_back(note_paragraph(joined(answer)));
  for (const Return& one : way.returns) {
    const char* key = outcome_key(one);
    if (key == nullptr) continue;
    const auto& row = finding.rows.at(static_cast<std::size_t>(one.row) - 1);
    const std::string name = one.old_piece ? telling.piece_name(*one.old_piece) : row.name;
    blocks.emplace_back(note_paragraph(document::with_lead(
        telling.words.capitalised(name) + ".",
        joined({telling.words.say(key),
                one.reel_altered ? telling.words.say("statement.reel-altered") : ""}))));
  }
  if (!way.surface_losses.empty()) {
    std::vector<std::string> names;
    for (const auto& loss : way.surface_losses)
      names.push_back(row_name(telling, finding.rows.at(static_cast<std::size_t>(loss.row) - 1)));
    blocks.emplace_back(note_paragraph(
        telling.words.say("statement.surface-losses",
                          {{"count", names.size()}, {"names", telling.words.list(names)}})));
  }
  if (std::string bags = bagged(telling); !bags.empty())
    blocks.emplace_back(note_paragraph(std::move(bags)));
  return blocks;
}

}  // namespace

std::optional<document::Chapter> tell_statement_second_ledger(const Telling& telling) {
  document::Chapter chapter = telling.chapter("second-ledger");
  chapter.id = "statement-second-ledger";
  chapter.ledger = document::Ledger::second;
  chapter.starts_page = true;
  const assess::VisitAssessment* last = telling.assessment.last();
  const std::size_t entries = last == nullptr ? 0 : last->originality.second_ledger.size();
  if (entries > 0) chapter.stand_first = second_ledger_answer(telling, entries);
  if (last != nullptr) {
    if (auto table = fittings(telling, last->originality))
      chapter.blocks.emplace_back(std::move(*table));
  }
  document::Halves halves{tests(telling)};
  const auto go_on = [&](std::vector<HalfBlock> blocks) {
    std::move(blocks.begin(), blocks.end(), std::back_inserter(halves.left));
  };
  if (last != nullptr) go_on(way_back(telling, last->originality));
  go_on(treatment(telling));
  if (!halves.left.empty()) chapter.blocks.emplace_back(std::move(halves));
  if (chapter.blocks.empty()) return std::nullopt;
  return chapter;
}

}  // namespace winchbook::report
