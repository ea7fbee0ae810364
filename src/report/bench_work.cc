#include "report/bench_work.h"

#include <algorithm>
#include <utility>

#include "assess/tray/tray.h"
#include "record/enum_words.h"
#include "record/moments.h"
#include "report/care_words.h"
#include "report/fitting_words.h"
#include "report/table_columns.h"

namespace winchbook::report {
namespace {

using document::Block;
using document::Chapter;
using document::Subhead;
using record::Visit;

/// Each paragraph starts without an indent and may carry cautions beside it.
void add_paragraph(document::Text words, CautionList cautions, Chapter& chapter, bool first) {
  document::Paragraph paragraph{std::move(words)};
  if (first) paragraph.manner = document::ParagraphManner::unindented;
  std::move(cautions.begin(), cautions.end(), std::back_inserter(paragraph.beside));
  chapter.blocks.emplace_back(std::move(paragraph));
}

/// A step in which something can fly or break is told, with its warning beside it.
void add_dangerous_step(const Telling& telling, const record::StripStep& step, Chapter& chapter) {
  document::Text words = document::with_lead(
      telling.words.say("bench.step", {{"number", std::to_string(step.number)}}), "");
  words.parts.emplace_back(document::Run{" "});
  append(words, telling.text(step.what));
  document::Paragraph paragraph{std::move(words), document::ParagraphManner::unindented};
  for (document::Caution& caution : cautions_beside(telling, step))
    paragraph.beside.emplace_back(std::move(caution));
  chapter.blocks.emplace_back(std::move(paragraph));
}

void add_pictures(const Telling& telling, const std::vector<const record::Photo*>& pictures,
                  Chapter& chapter) {
  if (pictures.empty()) return;
  chapter.blocks.emplace_back(telling.figure(*pictures.front(), document::Width::full));
}

/// Whether the tray was written down and everything in it went somewhere.
bool tray_is_empty(const record::Record& record, const Visit& visit) {
  return !visit.tray.empty() && assess::tray::account(record, visit).closed();
}

void add_strip_down(const Telling& telling, const std::vector<const record::Photo*>& pictures,
                    Chapter& chapter) {
  const auto& steps = telling.visit.strip_down;
  if (steps.empty()) {
    add_pictures(telling, pictures, chapter);
    return;
  }
  chapter.blocks.emplace_back(Subhead{telling.words.say("bench.taken-apart")});
  document::Paragraph summary = telling.sentence(joined(
      {telling.words.say(
           "bench.strip-summary",
           {{"steps", steps.size()},
            {"steps_spelled", telling.words.spelled(static_cast<int>(steps.size()))}}),
       tray_is_empty(telling.record, telling.visit) ? telling.words.say("bench.tray-empty") : ""}));
  summary.manner = document::ParagraphManner::unindented;
  chapter.blocks.emplace_back(std::move(summary));
  add_pictures(telling, pictures, chapter);
  for (const record::StripStep& step : steps) {
    if (step.caution || step.spring_loose) add_dangerous_step(telling, step, chapter);
  }
}

/// The day of an act before its words; nothing where none is entered.
document::Text dated(const Telling& telling, const std::optional<base::EdtfDate>& day) {
  if (!day) return {};
  return document::with_lead(
      telling.words.say("bench.on-day",
                        {{"date", telling.words.capitalised(telling.words.date(*day))}}),
      " ");
}

void add_cleaning(const Telling& telling, Chapter& chapter) {
  const auto& cleaning = telling.visit.cleaning;
  if (cleaning.empty()) return;
  chapter.blocks.emplace_back(Subhead{telling.words.say("bench.cleaned")});
  bool first = true;
  for (const record::Cleaning& one : cleaning) {
    document::Text words = dated(telling, one.on);
    append(words, telling.text(one.what));
    if (!one.loss.empty()) {
      words.parts.emplace_back(document::Run{" "});
      append(words, telling.text(one.loss));
    }
    if (!one.against_warning.empty()) {
      words.parts.emplace_back(
          document::Run{" " + telling.words.say("bench.against-warning") + " "});
      append(words, telling.text(one.against_warning));
    }
    add_paragraph(std::move(words), cautions_beside(telling, one), chapter,
                  std::exchange(first, false));
  }
}

void add_work(const Telling& telling, Chapter& chapter) {
  const auto& work = telling.visit.work;
  if (work.empty()) return;
  chapter.blocks.emplace_back(Subhead{telling.words.say("bench.worked")});
  bool first = true;
  for (const record::Work& one : work) {
    document::Text words = dated(telling, one.on);
    append(words, telling.text(one.what));
    if (one.way_back) {
      words.parts.emplace_back(document::Run{" " + telling.words.say("bench.way-back") + " "});
      append(words, way_back_words(telling, *one.way_back));
    }
    add_paragraph(std::move(words), cautions_beside(telling, one), chapter,
                  std::exchange(first, false));
  }
}

void add_tests(const Telling& telling, Chapter& chapter) {
  if (telling.visit.findings.tests.empty()) return;
  chapter.blocks.emplace_back(tests_table(telling));
}

/// Every piece in a bag of this visit's hand-back, bag by bag.
void add_bags(const Telling& telling, Chapter& chapter) {
  document::Facts bags;
  for (const record::Piece& piece : telling.record.pieces) {
    if (piece.now.kind != record::Whereabouts::Kind::bagged || piece.now.bag.empty()) continue;
    const std::string label = telling.words.capitalised(piece.now.bag);
    const auto known = std::find_if(bags.facts.begin(), bags.facts.end(),
                                    [&](const auto& fact) { return fact.label == label; });
    if (known == bags.facts.end()) {
      bags.facts.push_back({label, document::plain(telling.words.capitalised(piece.name))});
    } else {
      known->words.parts.emplace_back(document::LineEnd{});
      known->words.parts.emplace_back(document::Run{telling.words.capitalised(piece.name)});
    }
  }
  if (bags.facts.empty()) return;
  std::stable_sort(bags.facts.begin(), bags.facts.end(), [](const auto& a, const auto& b) {
    return std::pair(a.label.size(), a.label) < std::pair(b.label.size(), b.label);
  });
  Subhead head{telling.words.say("bench.bags")};
  head.beside.emplace_back(
      document::SideNote{document::plain(telling.words.say("bench.bags-why"))});
  chapter.blocks.emplace_back(std::move(head));
  chapter.blocks.emplace_back(std::move(bags));
}

/// What came off and is unaccounted for, with the bench's reason for issuing all the same.
void add_unaccounted(const Telling& telling, Chapter& chapter) {
  if (telling.edition.unaccounted.empty()) return;
  document::Paragraph paragraph = telling.sentence(
      telling.words.say("bench.unaccounted", {{"reason", telling.edition.unaccounted}}));
  paragraph.manner = document::ParagraphManner::unindented;
  chapter.blocks.emplace_back(std::move(paragraph));
}

bool is_done(const record::TestResult& result) {
  return result.kind == record::TestResult::Kind::done;
}

/// What to beware of, by name, where the work is described.
void add_flags(const Telling& telling, Chapter& chapter) {
  const std::vector<ToldFlag> flags = flags_told(telling, {knowledge::Matters::keep});
  if (flags.empty()) return;
  document::Facts facts;
  facts.label_width = 102;
  facts.warns = true;
  for (const ToldFlag& flag : flags)
    facts.facts.push_back({telling.words.capitalised(flag.name), flag.words});
  chapter.blocks.emplace_back(Subhead{telling.words.say("bench.flags")});
  chapter.blocks.emplace_back(std::move(facts));
}

}  // namespace

std::string test_reading(const Telling& telling, const record::TestResult& result,
                         std::string_view unit) {
  using Kind = record::TestResult::Kind;
  if (result.kind == Kind::not_safe_to_test) return telling.words.say("test.not-safe");
  if (result.kind == Kind::not_tested)
    return telling.words.say(record::is_written(result) ? "test.not-made" : "test.not-entered");
  const auto number = [&](const base::Decimal& value) {
    if (unit == "\u00B0") return telling.words.number(value) + std::string(unit);
    return unit.empty() ? telling.words.number(value) : telling.words.measure(value, unit);
  };
  std::vector<std::string> parts;
  if (result.reading && result.reading_high) {
    parts.push_back(telling.words.say("test.range", {{"low", telling.words.number(*result.reading)},
                                                     {"high", number(*result.reading_high)}}));
  } else if (result.reading) {
    parts.push_back(number(*result.reading));
  }
  if (!result.words.empty()) parts.push_back(result.words);
  std::string out = telling.words.joined("join.comma", parts);
  if (result.verdict && *result.verdict == record::Verdict::with_care) {
    out = telling.words.say("test.with-care", {{"reading", out}});
  }
  return out;
}

std::string limited_reading(const Telling& telling, const record::TestResult& result,
                            std::string_view unit) {
  std::string reading = test_reading(telling, result, unit);
  if (!result.load_limit) return reading;
  return telling.words.say("test.limited",
                           {{"reading", std::move(reading)},
                            {"limit", telling.words.measure(result.load_limit->value, "N")}});
}

document::Table tests_table(const Telling& telling) {
  using Align = document::Column::Align;
  document::Table table = table_of(telling, {{"test.what", {Align::words, 0, true}},
                                             {"test.unit", {Align::words, 30}},
                                             {"as-found", {Align::numbers, 72}},
                                             {"as-left", {Align::numbers, 72}}});
  table.width = document::Width::main;
  table.dashed = true;
  table.title = telling.words.say("bench.proved");
  for (const record::Test& test : telling.visit.findings.tests) {
    document::Row row;
    const std::string before = limited_reading(telling, test.before);
    const std::string after = limited_reading(telling, test.after);
    const bool changed = is_done(test.before) && is_done(test.after) && after != before;
    document::Text left;
    left.parts.emplace_back(document::Run{.text = after, .bold = changed});
    row.cells = {{document::plain(test.what)},
                 {document::plain(test.unit)},
                 {document::plain(before)},
                 {std::move(left)}};
    table.rows.push_back(std::move(row));
  }
  for (const record::Test& test : telling.visit.findings.tests) {
    if (test.note.empty()) continue;
    if (!table.below.empty()) table.below.parts.emplace_back(document::Run{" "});
    table.below.parts.emplace_back(document::Run{
        telling.words.say("test.note", {{"test", test.what}, {"note", telling.plain(test.note)}})});
  }
  const bool in_newtons =
      std::any_of(telling.visit.findings.tests.begin(), telling.visit.findings.tests.end(),
                  [](const record::Test& one) { return one.unit == "N"; });
  const std::string beside =
      joined({telling.words.say("test.same-tests"),
              in_newtons ? telling.words.say("test.newtons") : "", telling.judged("test.by")});
  if (!beside.empty()) table.beside.emplace_back(document::SideNote{document::plain(beside)});
  table.summary = telling.words.say("test.summary");
  return table;
}

void add_bench_work(const Telling& telling, const std::vector<const record::Photo*>& pictures,
                    Chapter& chapter) {
  add_strip_down(telling, pictures, chapter);
  add_cleaning(telling, chapter);
  add_work(telling, chapter);
  add_unaccounted(telling, chapter);
  add_earlier_visits(telling, chapter);
  add_tests(telling, chapter);
  add_bags(telling, chapter);
  add_flags(telling, chapter);
}

void add_short_work(const Telling& telling, Chapter& chapter) {
  const std::size_t first = chapter.blocks.size();
  add_strip_down(telling, {}, chapter);
  add_unaccounted(telling, chapter);
  std::erase_if(chapter.blocks,
                [](const Block& block) { return std::holds_alternative<Subhead>(block); });
  for (std::size_t i = first + 1; i < chapter.blocks.size(); ++i) {
    if (auto* paragraph = std::get_if<document::Paragraph>(&chapter.blocks[i])) {
      paragraph->manner = document::ParagraphManner::reading;
    }
  }
  add_bags(telling, chapter);
}

void add_earlier_visits(const Telling& telling, Chapter& chapter) {
  for (const Visit& visit : telling.record.visits) {
    if (visit.id == telling.visit.id || visit.summary.empty()) continue;
    chapter.blocks.emplace_back(Subhead{
        telling.words.say("bench.earlier", {{"date", telling.words.date(visit.taken_in)}})});
    document::Paragraph paragraph = telling.paragraph(visit.summary);
    paragraph.manner = document::ParagraphManner::unindented;
    chapter.blocks.emplace_back(std::move(paragraph));
  }
}

}  // namespace winchbook::report
