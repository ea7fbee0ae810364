#include <array>
#include <utility>

#include "record/enum_words.h"
#include "report/bench_words.h"
#include "report/care_words.h"
#include "report/hazards.h"
#include "report/sections.h"
#include "report/statement.h"
#include "report/table_columns.h"
#include "report/told.h"

namespace winchbook::report {
namespace {

using assess::strip::Finding;
using assess::strip::PlaceToStrip;
using document::Chapter;
using document::Run;
using document::Subhead;
using document::Text;

constexpr double kRoomForPencil = 22.5;

std::string answer(const Telling& telling, const Finding& finding) {
  const std::size_t springs = springs_named(finding);
  const words::Argument springs_are{"springs", springs};
  const words::Argument spelled{"springs_spelled",
                                telling.words.spelled(static_cast<int>(springs), true)};
  if (finding.steps.empty()) {
    return telling.words.say("bench-sheet.no-steps",
                             {{"places", finding.places.size()}, springs_are, spelled});
  }
  return telling.words.say(
      "bench-sheet.answer",
      {{"steps", finding.steps.size()},
       {"steps_spelled", telling.words.spelled(static_cast<int>(finding.steps.size()), true)},
       {"parts", pieces_off(finding)},
       springs_are,
       spelled});
}

void add_fact(const Telling& telling, const char* key, std::string words, document::Facts& facts) {
  if (words.empty()) return;
  facts.facts.push_back({telling.words.say(key), document::plain(std::move(words))});
}

document::Facts what_it_is(const Telling& telling) {
  const record::Reel& reel = telling.record.reel;
  document::Facts facts;
  facts.label_width = 72;
  add_fact(telling, "bench-sheet.reel", kind_and_maker(telling), facts);
  add_fact(telling, "bench-sheet.hand",
           reel.hand.left == record::Hand::not_determined
               ? ""
               : telling.words.say("hand." + std::string(record::word_of(reel.hand.left))),
           facts);
  if (reel.gear_ratio) {
    add_fact(
        telling, "bench-sheet.gear",
        telling.words.say("statement.gear", {{"ratio", telling.words.number(*reel.gear_ratio)}}),
        facts);
  }
  std::vector<std::string> sizes;
  for (const record::Size& size : reel.sizes) {
    sizes.push_back(telling.words.say(
        "statement.size",
        {{"what", size.what}, {"size", telling.words.measure(size.size.value, "mm")}}));
  }
  add_fact(telling, "bench-sheet.sizes", telling.words.joined("join.semicolon", sizes), facts);
  document::SideNote note{document::plain(telling.words.say("bench-sheet.how-to-use"))};
  facts.beside.emplace_back(std::move(note));
  return facts;
}

/// What holds for every reel, and the hazards of this one in the margin.
void add_rules(const Telling& telling, Chapter& chapter) {
  Subhead head{telling.words.say("bench-sheet.before")};
  for (document::Caution& caution : hazards_open(telling))
    head.beside.emplace_back(std::move(caution));
  chapter.blocks.emplace_back(std::move(head));
  document::List rules;
  for (const char* key :
       {"bench-sheet.rule.photographs", "bench-sheet.rule.stays-in", "bench-sheet.rule.grease",
        "bench-sheet.rule.seized", "bench-sheet.rule.captive", "bench-sheet.rule.tray"}) {
    rules.items.push_back(document::plain(telling.words.say(key)));
  }
  chapter.blocks.emplace_back(std::move(rules));
}

/// The step's own caution; and the springs that it does not warn of by itself.
std::vector<document::Beside> warnings(const Telling& telling, const record::StripStep& step,
                                       const assess::strip::Step& found) {
  std::vector<document::Beside> beside;
  for (document::Caution& caution : cautions_of_acts(telling, step))
    beside.emplace_back(std::move(caution));
  std::vector<assess::strip::Spring> unsaid;
  for (const assess::strip::Spring& spring : found.springs) {
    const bool own = step.caution && spring.frees == assess::strip::Spring::Frees::comes_off;
    if (!own) unsaid.push_back(spring);
  }
  // A step may say that something springs loose of which no list knows.
  if (unsaid.empty() && step.spring_loose && !step.caution) {
    beside.emplace_back(
        document::Caution{telling.words.say("bench.spring.label"),
                          document::plain(joined({telling.words.say("bench.spring.some"),
                                                  telling.words.say("bench.spring.guard")}))});
  }
  if (auto caution = spring_caution(telling, unsaid)) beside.emplace_back(std::move(*caution));
  return beside;
}

document::Step step_of(const Telling& telling, const assess::strip::Step& found) {
  const record::StripStep& step = telling.visit.strip_down.at(found.at);
  document::Step out{std::to_string(step.number), telling.text(step.what)};
  if (!found.off.empty()) {
    out.facts.push_back(
        {telling.words.say("bench-sheet.parts"), document::plain(parts_words(telling, found.off))});
  }
  if (!step.orientation.empty()) {
    out.facts.push_back(
        {telling.words.say("bench-sheet.orientation"), telling.text(step.orientation)});
  }
  if (!step.tool.empty()) {
    out.facts.push_back({telling.words.say("bench-sheet.tool"),
                         document::plain(telling.words.capitalised(step.tool))});
  }
  out.beside = warnings(telling, step, found);
  bool pictured = false;
  for (const record::PhotoId& id : step.photos) {
    const record::Photo* photo = find(telling.record, id);
    if (photo == nullptr || photo->withheld) continue;
    out.beside.emplace_back(telling.figure(*photo, document::Width::side));
    pictured = true;
  }
  // A critical joint: a spring is let go, and nobody has photographed it.
  if (!found.springs.empty() && !pictured)
    out.boxes.push_back(telling.words.say("bench-sheet.box.photograph"));
  out.boxes.push_back(telling.words.say("bench-sheet.box.off"));
  out.boxes.push_back(telling.words.say("bench-sheet.box.back"));
  return out;
}

Text tick(const std::string& spoken) {
  Text text;
  text.parts.emplace_back(document::SignRun{document::Sign::tick_box, spoken});
  text.parts.emplace_back(Run{"\u00A0"});  // a sign stands before a character
  return text;
}

Text place_words(const Telling& telling, const PlaceToStrip& place) {
  Text text = document::plain(telling.words.capitalised(place.name));
  if (!place.captive_spring) return text;
  std::vector<std::string> sentences{
      place.held_by.empty()
          ? telling.words.say("bench-sheet.place.spring")
          : telling.words.say("bench-sheet.place.spring-held", {{"holder", place.held_by}})};
  if (place.loose_pieces > 1) {
    sentences.push_back(telling.words.say(
        "bench.spring.pieces",
        {{"count", place.loose_pieces}, {"spelled", telling.words.spelled(place.loose_pieces)}}));
  }
  text.parts.emplace_back(document::LineEnd{});
  text.parts.emplace_back(Run{.text = joined(sentences), .bold = true});
  return text;
}

/// Rows to fill in, by assembly: which order, and which way up, nobody has written down yet.
document::Table places_table(const Telling& telling, const Finding& finding) {
  using Align = document::Column::Align;
  document::Table table = table_of(telling, {{"bench-sheet.head.order", {Align::words, 30}},
                                             {"bench-sheet.head.part", {Align::words, 150, true}},
                                             {"bench-sheet.head.count", {Align::numbers, 36}},
                                             {"bench-sheet.head.way", {Align::words, 0}},
                                             {"bench-sheet.box.off", {Align::words, 27}},
                                             {"bench-sheet.box.back", {Align::words, 27}}});
  table.least_row = kRoomForPencil;
  std::string assembly;
  for (const PlaceToStrip& place : finding.places) {
    if (place.assembly != assembly && !place.assembly.empty()) {
      document::Row group;
      Text name;
      name.parts.emplace_back(Run{.text = telling.words.capitalised(place.assembly), .bold = true});
      group.cells.push_back({std::move(name), static_cast<int>(table.columns.size())});
      group.names_group = true;
      table.rows.push_back(std::move(group));
      assembly = place.assembly;
    }
    document::Row row;
    row.cells = {{{}},
                 {place_words(telling, place)},
                 {document::plain(std::to_string(place.count))},
                 {{}},
                 {tick(telling.words.say("bench-sheet.spoken.off"))},
                 {tick(telling.words.say("bench-sheet.spoken.back"))}};
    table.rows.push_back(std::move(row));
  }
  table.summary = telling.words.say("bench-sheet.places-summary");
  return table;
}

}  // namespace

std::optional<Chapter> tell_bench_sheet(const Telling& telling) {
  const Finding& finding = strip_of(telling);
  Chapter chapter = telling.chapter("bench-sheet");
  chapter.title = titled(telling, reel_in_trade(telling));
  chapter.tells = told_identity(telling.assessment.identity);
  chapter.stand_first = answer(telling, finding);
  chapter.blocks.emplace_back(what_it_is(telling));
  add_rules(telling, chapter);
  if (finding.steps.empty()) {
    if (finding.places.empty()) return chapter;
    Subhead head{telling.words.say("bench-sheet.places")};
    head.width = document::Width::full;
    chapter.blocks.emplace_back(std::move(head));
    chapter.blocks.emplace_back(places_table(telling, finding));
    return chapter;
  }
  chapter.blocks.emplace_back(Subhead{telling.words.say("bench-sheet.steps")});
  for (const assess::strip::Step& step : finding.steps)
    chapter.blocks.emplace_back(step_of(telling, step));
  return chapter;
}

}  // namespace winchbook::report
