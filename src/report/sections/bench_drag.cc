#include <utility>

#include "report/bench_words.h"
#include "report/fitting_words.h"
#include "report/sections.h"
#include "report/table_columns.h"

namespace winchbook::report {
namespace {

using assess::fitting::Member;
using assess::fitting::Pull;
using assess::fitting::RecordedDrag;
using document::Chapter;
using document::Column;
using document::Run;
using document::Text;

std::string millimetres(const Telling& telling, const std::optional<base::Millimetres>& size) {
  return size ? telling.words.number(size->value) : "";
}

std::string millimetres(const Telling& telling, const std::optional<double>& size) {
  constexpr int kPlaces = 2;
  return size ? number_words(telling, *size, kPlaces) : "";
}

/// Seat, choice and adaptation of everything that this visit fitted into a measured seat.
std::optional<document::Table> seats(const Telling& telling) {
  document::Table table =
      table_of(telling, {{"bench-drag.head.part", {Column::Align::words, 0, true}},
                         {"bench-drag.head.hole", {Column::Align::numbers, 36}},
                         {"bench-drag.head.outside", {Column::Align::numbers, 42}},
                         {"bench-drag.head.depth", {Column::Align::numbers, 36}}});
  table.width = document::Width::main;
  table.dashed = true;
  table.title = telling.words.say("bench-drag.seats");
  for (const record::Fitting& fitting : telling.record.fittings) {
    if (fitting.visit != telling.visit.id || !fitting.seat) continue;
    const record::Piece* piece = find(telling.record, fitting.piece);
    if (piece == nullptr) continue;
    document::Row row;
    Text name;
    name.parts.emplace_back(Run{
        .text = telling.words.capitalised(
            piece->count > 1 ? telling.words.say("bench.counted-part",
                                                 {{"name", piece->name}, {"count", piece->count}})
                             : piece->name),
        .bold = true});
    const auto add = [&](const char* key, const Text& said) {
      if (said.empty()) return;
      name.parts.emplace_back(document::LineEnd{});
      name.parts.emplace_back(Run{.text = telling.words.say(key) + " ", .bold = true});
      append(name, said);
    };
    add("bench-drag.from", document::plain(donor_words(telling, *piece)));
    add("bench-drag.adapted", telling.text(fitting.adaptation));
    add("bench-drag.seat-note", telling.text(fitting.seat->note));
    row.cells = {{std::move(name)},
                 {document::plain(millimetres(telling, fitting.seat->bore))},
                 {document::plain(millimetres(telling, fitting.seat->outside))},
                 {document::plain(millimetres(telling, fitting.seat->depth))}};
    table.rows.push_back(std::move(row));
  }
  if (table.rows.empty()) return std::nullopt;
  table.summary = telling.words.say("bench-drag.seats-summary");
  table.beside.emplace_back(
      document::SideNote{document::plain(telling.words.say("bench-drag.seats-note"))});
  return table;
}

/// Which rings rub, in the order of the stack.
std::string rubbing(const Telling& telling, const RecordedDrag& drag) {
  std::vector<std::string> rings;
  for (const assess::fitting::RubbingFace& face : drag.rubbing) {
    rings.push_back(
        telling.words.say("bench-drag.ring", {{"outer", number_words(telling, face.ring.outer, 2)},
                                              {"inner", number_words(telling, face.ring.inner, 2)},
                                              {"material", face.material}}));
  }
  std::string faces = telling.words.say(
      "bench-drag.faces",
      {{"count", drag.faces}, {"spelled", telling.words.spelled(drag.faces, true)}});
  if (rings.empty()) return faces;
  return joined(
      {faces, telling.words.say("bench-drag.rings", {{"rings", telling.words.list(rings)}})});
}

document::Table stack(const Telling& telling, const RecordedDrag& drag) {
  document::Table table =
      table_of(telling, {{"bench-drag.head.number", {Column::Align::numbers, 15}},
                         {"bench-drag.head.washer", {Column::Align::words, 0, true}},
                         {"bench-drag.head.turns", {Column::Align::words, 84}},
                         {"bench-drag.head.across", {Column::Align::numbers, 36}},
                         {"bench-drag.head.inside", {Column::Align::numbers, 36}},
                         {"bench-drag.head.thick", {Column::Align::numbers, 36}}});
  table.width = document::Width::main;
  table.title = telling.words.say("bench-drag.stack");
  int number = 0;
  for (const Member& member : drag.stack) {
    document::Row row;
    const std::string name =
        member.material.empty()
            ? member.name
            : telling.words.say("bench-drag.washer",
                                {{"name", member.name}, {"material", member.material}});
    row.cells = {{document::plain(std::to_string(++number))},
                 {document::plain(telling.words.capitalised(name))},
                 {document::plain(telling.words.say("bench-drag.turns." +
                                                    std::string(base::word_of(member.turns))))},
                 {document::plain(millimetres(telling, member.outside))},
                 {document::plain(millimetres(telling, member.inside))},
                 {document::plain(millimetres(telling, member.thickness))}};
    table.rows.push_back(std::move(row));
  }
  table.below = document::plain(rubbing(telling, drag));
  table.summary = telling.words.say("bench-drag.stack-summary");
  table.beside.emplace_back(
      document::SideNote{document::plain(telling.words.say("bench-drag.stack-note"))});
  if (drag.hazard) {
    table.beside.emplace_back(
        document::Caution{telling.words.say("bench-drag.hazard.label"),
                          document::plain(telling.words.say("bench-drag.hazard"))});
  }
  return table;
}

std::string span(const Telling& telling, const assess::fitting::Span& newtons) {
  std::string low = number_words(telling, newtons.low, 1);
  const std::string high = number_words(telling, newtons.high, 1);
  return low == high ? low : telling.words.say("test.range", {{"low", low}, {"high", high}});
}

/// The figures that the curve is drawn from, at five fills.
document::Table pulls(const Telling& telling, const RecordedDrag& drag) {
  document::Table table =
      table_of(telling, {{"bench-drag.head.fill", {Column::Align::words, 0, true}},
                         {"bench-drag.head.diameter", {Column::Align::numbers, 72}},
                         {"bench-drag.head.new", {Column::Align::numbers, 72}},
                         {"bench-drag.head.worn", {Column::Align::numbers, 72}}});
  table.width = document::Width::main;
  for (const Pull& pull : drag.finding.pulls) {
    document::Row row;
    row.cells = {{document::plain(telling.words.say("bench-drag.fill", {{"fill", pull.fill}}))},
                 {document::plain(number_words(telling, pull.diameter, 1))},
                 {document::plain(span(telling, pull.pressure))},
                 {document::plain(span(telling, pull.wear))}};
    table.rows.push_back(std::move(row));
  }
  table.below = document::plain(telling.words.say(
      "bench-drag.formula", {{"force", newtons_words(telling, drag.force)},
                             {"ratio", number_words(telling, drag.ratio, 3)},
                             {"low", number_words(telling, drag.friction.low, 2)},
                             {"high", number_words(telling, drag.friction.high, 2)},
                             {"source", drag.friction_source}}));
  table.summary = telling.words.say("bench-drag.pulls-summary");
  return table;
}

std::string answer(const Telling& telling, const RecordedDrag& drag) {
  std::vector<std::string> sentences;
  if (drag.lacking.empty()) {
    const Pull& empty = drag.curve.back();
    sentences.push_back(telling.words.say(
        "bench-drag.answer",
        {{"full", newtons_words(telling, *drag.setting)},
         {"empty", newtons_words(telling, (empty.pressure.low + empty.pressure.high) / 2)}}));
  }
  if (drag.advised) {
    sentences.push_back(telling.words.say("bench-drag.answer-advised",
                                          {{"drag", pull_words(telling, *drag.advised)}}));
  }
  if (sentences.empty()) return telling.words.say("bench-drag.answer-none");
  return joined(sentences);
}

}  // namespace

std::optional<Chapter> tell_bench_drag(const Telling& telling) {
  if (telling.recorded == nullptr) return std::nullopt;
  auto seated = seats(telling);
  if (!has_drag(telling) && !seated) return std::nullopt;
  const RecordedDrag& drag = telling.recorded->drag;
  Chapter chapter = telling.chapter("bench-drag");
  if (has_drag(telling)) {
    chapter.stand_first = answer(telling, drag);
  } else {
    chapter.title = telling.words.say("bench-drag.seats-title");
    chapter.eyebrow = telling.words.say("bench-drag.seats-eyebrow");
  }
  if (seated) chapter.blocks.emplace_back(std::move(*seated));
  if (!has_drag(telling)) return chapter;
  if (!drag.stack.empty()) chapter.blocks.emplace_back(stack(telling, drag));
  if (auto chart = drag_chart(telling, ChartSize::full)) {
    chapter.blocks.emplace_back(std::move(*chart));
    chapter.blocks.emplace_back(pulls(telling, drag));
  }
  for (std::string words : {lacking_words(telling), share_words(telling)}) {
    if (words.empty()) continue;
    document::Paragraph paragraph = telling.sentence(std::move(words));
    paragraph.manner = document::ParagraphManner::unindented;
    chapter.blocks.emplace_back(std::move(paragraph));
  }
  return chapter;
}

}  // namespace winchbook::report
