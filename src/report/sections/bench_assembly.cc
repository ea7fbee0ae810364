#include <algorithm>
#include <utility>

#include "report/bench_words.h"
#include "report/sections.h"
#include "report/table_columns.h"

namespace winchbook::report {
namespace {

using assess::strip::Finding;
using assess::strip::Part;
using document::Chapter;
using document::Run;
using document::Text;
using knowledge::Lubricant;

std::string lubricants_of(const Telling& telling, const std::vector<Part>& parts) {
  const auto any = [&](Lubricant lubricant) {
    return std::any_of(parts.begin(), parts.end(),
                       [&](const Part& part) { return part.lubricant == lubricant; });
  };
  std::vector<std::string> words;
  if (any(Lubricant::grease)) words.push_back(telling.words.say("bench-assembly.grease"));
  if (any(Lubricant::oil)) words.push_back(telling.words.say("bench-assembly.oil"));
  return telling.words.list(words);
}

Text tick(const Telling& telling) {
  Text text;
  text.parts.emplace_back(
      document::SignRun{document::Sign::tick_box, telling.words.say("bench-sheet.spoken.back")});
  text.parts.emplace_back(Run{"\u00A0"});  // a sign stands before a character
  return text;
}

Text row_words(const Telling& telling, const assess::strip::Step& step) {
  const record::StripStep& said = telling.visit.strip_down.at(step.at);
  Text text = document::plain(parts_words(telling, step.back));
  const auto new_line = [&](Run run) {
    if (!text.empty()) text.parts.emplace_back(document::LineEnd{});
    text.parts.emplace_back(std::move(run));
  };
  if (step.back.empty()) text = {};
  if (const auto out = stays_out(step); !out.empty()) {
    new_line({.text = telling.words.say("bench-assembly.stays-out",
                                        {{"parts", parts_words(telling, out)}}),
              .italic = true});
  }
  if (!step.springs.empty()) {
    new_line({.text = telling.words.say("bench-assembly.spring"), .bold = true});
  }
  if (!said.orientation.empty() && !step.back.empty()) {
    new_line({.text = telling.plain(said.orientation)});
  }
  return text;
}

document::Table backwards(const Telling& telling, const Finding& finding) {
  using Align = document::Column::Align;
  document::Table table = table_of(telling, {{"bench-assembly.head.step", {Align::numbers, 24}},
                                             {"bench-assembly.head.parts", {Align::words, 0, true}},
                                             {"bench-assembly.head.lubricant", {Align::words, 57}},
                                             {"bench-assembly.head.in", {Align::words, 18}}});
  table.width = document::Width::main;
  const auto add = [&](const std::string& number, Text words, const std::vector<Part>& parts) {
    document::Row row;
    row.cells = {{document::plain(number)},
                 {std::move(words)},
                 {document::plain(lubricants_of(telling, parts))},
                 {tick(telling)}};
    table.rows.push_back(std::move(row));
  };
  for (const Part& part : finding.put_in) {
    Text words = document::plain(parts_words(telling, {part}));
    words.parts.emplace_back(document::LineEnd{});
    words.parts.emplace_back(
        Run{.text = telling.words.say("bench-assembly.was-empty"), .italic = true});
    add("", std::move(words), {part});
  }
  for (auto step = finding.steps.rbegin(); step != finding.steps.rend(); ++step) {
    if (step->off.empty()) continue;
    add(std::to_string(telling.visit.strip_down.at(step->at).number), row_words(telling, *step),
        step->back);
  }
  table.summary = telling.words.say("bench-assembly.summary");
  document::SideNote note{document::plain(telling.words.say("bench-assembly.how"))};
  table.beside.emplace_back(std::move(note));
  if (finding.free_spool) {
    table.beside.emplace_back(
        document::Caution{telling.words.say("bench-assembly.side-plate.label"),
                          document::plain(telling.words.say("bench-assembly.side-plate"))});
  }
  return table;
}

/// Dry or greased, as the record has it, in the words of common practice.
std::string drag_washers(const Telling& telling) {
  if (!telling.visit.drag || !telling.visit.drag->greased) return "";
  return telling.words.say(*telling.visit.drag->greased ? "bench-assembly.washers-greased"
                                                        : "bench-assembly.washers-dry");
}

void add_lubrication(const Telling& telling, const Finding& finding, Chapter& chapter) {
  document::Facts facts;
  facts.label_width = 72;
  const auto add = [&](const char* label, const char* how, const std::string& parts) {
    if (parts.empty()) return;
    facts.facts.push_back(
        {telling.words.say(label), document::plain(joined({parts + ".", telling.words.say(how)}))});
  };
  add("bench-assembly.grease-label", "bench-assembly.grease-how",
      lubricated_words(telling, finding.lubricated, Lubricant::grease));
  add("bench-assembly.oil-label", "bench-assembly.oil-how",
      lubricated_words(telling, finding.lubricated, Lubricant::oil));
  if (std::string washers = drag_washers(telling); !washers.empty()) {
    facts.facts.push_back(
        {telling.words.say("bench-assembly.washers"), document::plain(std::move(washers))});
  }
  if (facts.facts.empty()) return;
  document::Subhead head{telling.words.say("bench-assembly.lubrication")};
  head.beside.emplace_back(
      document::SideNote{document::plain(telling.words.say("bench-assembly.lubrication-note"))});
  chapter.blocks.emplace_back(std::move(head));
  chapter.blocks.emplace_back(std::move(facts));
}

void add_not_apart(const Telling& telling, const Finding& finding, Chapter& chapter) {
  if (finding.steps.empty()) return;
  document::Subhead head{telling.words.say("bench-assembly.not-apart")};
  chapter.blocks.emplace_back(std::move(head));
  document::Paragraph paragraph = telling.sentence(
      finding.not_apart.empty()
          ? telling.words.say("bench-assembly.all-apart")
          : telling.words.say("bench-assembly.stayed",
                              {{"parts", parts_words(telling, finding.not_apart)}}));
  paragraph.manner = document::ParagraphManner::unindented;
  if (auto caution = spring_caution(telling, finding.left_loaded)) {
    caution->words = document::plain(joined(
        {telling.words.say("bench-assembly.left-loaded"), document::spoken(caution->words)}));
    paragraph.beside.emplace_back(std::move(*caution));
  }
  chapter.blocks.emplace_back(std::move(paragraph));
}

}  // namespace

std::optional<Chapter> tell_bench_assembly(const Telling& telling) {
  const Finding& finding = strip_of(telling);
  Chapter chapter = telling.chapter("bench-assembly");
  if (finding.steps.empty()) {
    chapter.stand_first = telling.words.say("bench-assembly.no-steps");
    document::Paragraph rule = telling.sentence(
        joined({telling.words.say("bench-assembly.how"),
                finding.free_spool ? telling.words.say("bench-assembly.side-plate") : ""}));
    rule.manner = document::ParagraphManner::unindented;
    chapter.blocks.emplace_back(std::move(rule));
  } else {
    chapter.stand_first = telling.words.say(
        "bench-assembly.answer", {{"last", finding.steps.size()}, {"new", finding.put_in.size()}});
    chapter.blocks.emplace_back(backwards(telling, finding));
  }
  add_lubrication(telling, finding, chapter);
  add_not_apart(telling, finding, chapter);
  return chapter;
}

}  // namespace winchbook::report
