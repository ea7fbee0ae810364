#include <algorithm>
#include <array>
#include <utility>

#include "record/enum_words.h"
#include "report/dating_words.h"
#include "report/sections.h"

namespace winchbook::report {
namespace {

using assess::originality::Finding;
using assess::originality::PieceRow;
using assess::originality::Side;
using assess::originality::Standing;
using document::Cell;
using document::Sign;
using document::Text;

/// Over this many rows the ledger of a keepsake tells only what is not plainly original.
constexpr std::size_t kRowsToTellAll = 60;

struct StandingRow {
  Standing standing;
  Sign sign;
  const char* key;
};

constexpr std::array<StandingRow, 9> kStandings{{
    {Standing::original, Sign::original, "standing.original"},
    {Standing::same_maker, Sign::same_maker, "standing.same-maker"},
    {Standing::service_spare, Sign::same_maker, "standing.service-spare"},
    {Standing::life, Sign::other, "standing.life"},
    {Standing::another_maker, Sign::other, "standing.another-maker"},
    {Standing::bench, Sign::other, "standing.bench"},
    {Standing::missing, Sign::missing, "standing.missing"},
    {Standing::left_empty, Sign::missing, "standing.left-empty"},
    {Standing::not_determined, Sign::undetermined, "standing.not-determined"},
}};

const StandingRow& of(Standing standing) {
  return *std::find_if(kStandings.begin(), kStandings.end(),
                       [&](const StandingRow& row) { return row.standing == standing; });
}

document::OriginalityChart::Bar bar(const Telling& telling, const char* when,
                                    const base::RatioRange& range) {
  return {telling.words.say(when),
          {static_cast<double>(range.low.rounded(10000)) / 100.0,
           static_cast<double>(range.high.rounded(10000)) / 100.0},
          telling.hundredths(range)};
}

void add_question(const Telling& telling, const char* key, const assess::originality::Index& index,
                  document::ChartFigure& figure) {
  if (!index.found || !index.left) return;
  const std::string name = telling.words.say(key);
  std::get<document::OriginalityChart>(figure.chart)
      .questions.push_back(
          {name, {bar(telling, "as-found", *index.found), bar(telling, "as-left", *index.left)}});
  const std::string spoken =
      telling.words.say("ledger.chart-spoken", {{"question", name},
                                                {"found", telling.hundredths(*index.found)},
                                                {"left", telling.hundredths(*index.left)}});
  figure.alternative = joined({figure.alternative, spoken});
}

std::optional<document::ChartFigure> chart(const Telling& telling, const Finding& finding) {
  document::ChartFigure figure{document::OriginalityChart{}, ""};
  add_question(telling, "ledger.parts", finding.born_here, figure);
  add_question(telling, "ledger.surfaces", finding.surface, figure);
  auto& chart = std::get<document::OriginalityChart>(figure.chart);
  if (chart.questions.empty()) return std::nullopt;
  std::string below = telling.words.say("ledger.hatched");
  if (finding.way_back.born_here_restored) {
    below += " " + telling.words.say(
                       "ledger.refit",
                       {{"share", telling.hundredths(*finding.way_back.born_here_restored)}});
  }
  chart.below = document::plain(joined({below, telling.judged("ledger.judged")}));
  return figure;
}

Text standing_words(const Telling& telling, Standing standing, bool changed) {
  const StandingRow& row = of(standing);
  Text text;
  text.parts.emplace_back(document::SignRun{row.sign});
  document::Run words{telling.words.say(row.key)};
  words.bold = changed;
  text.parts.emplace_back(std::move(words));
  return text;
}

/// The state of three quarters of a surface or more; a surface without such a state is mixed.
std::string surface_words(const Telling& telling, const Side& side) {
  if (!side.makers_surface) return telling.words.say("surface.not-the-makers");
  if (side.surface.empty()) return telling.words.say("surface.not-examined");
  const auto most =
      std::max_element(side.surface.begin(), side.surface.end(),
                       [](const auto& a, const auto& b) { return a.share < b.share; });
  const std::string state =
      telling.words.say("surface." + std::string(record::word_of(most->state)));
  const base::Decimal three_quarters(75, 0);
  return most->share.value < three_quarters ? telling.words.say("surface.mixed") : state;
}

Text same(const Telling& telling) {
  Text text;
  text.parts.emplace_back(document::Run{.text = telling.words.say("the-same"), .italic = true});
  return text;
}

std::string name_of(const Telling& telling, const PieceRow& row) {
  if (row.seats < 2) return row.name;
  return telling.words.say("ledger.name-and-count",
                           {{"name", row.name}, {"count", telling.words.spelled(row.seats)}});
}

/// The piece in this row, when its marks do not agree with the others'.
const assess::dating::Suspect* suspect_of(const Telling& telling, const PieceRow& row) {
  return row.found.piece ? telling.assessment.dating.suspect(*row.found.piece) : nullptr;
}

/// What the dating proposes is told beside the record's own answer, which stands.
void add_proposal(const Telling& telling, const assess::dating::Suspect& suspect, Text& words) {
  words.parts.emplace_back(document::LineEnd{});
  words.parts.emplace_back(document::Run{
      .text = telling.words.say(suspect.already_open ? "ledger.marks-disagree"
                                                     : "ledger.proposed-not-determined"),
      .italic = true});
}

/// The reasons for what the dating proposes, a sentence for each piece.
std::string proposals(const Telling& telling) {
  std::vector<std::string> reasons;
  for (const auto& suspect : telling.assessment.dating.suspects)
    reasons.push_back(disagreement(telling, suspect));
  return joined(reasons);
}

document::Row ledger_row(const Telling& telling, const PieceRow& row) {
  const std::string surface_found = surface_words(telling, row.found);
  const std::string surface_left = surface_words(telling, row.left);
  const bool same_standing = !row.changed && row.found.standing == row.left.standing;
  document::Row out;
  out.anchor = "row-" + std::to_string(row.number);
  out.cells.push_back({document::plain(std::to_string(row.number))});
  out.cells.push_back({document::plain(name_of(telling, row))});
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

/// A long ledger goes by assembly, in the record's order.
void start_assembly(const Telling& telling, const std::string& assembly, document::Table& table) {
  document::Row row;
  const std::string name = assembly.empty() ? telling.words.say("ledger.no-assembly")
                                            : telling.words.capitalised(assembly);
  document::Run words{name};
  words.bold = true;
  row.cells.push_back({Text{{std::move(words)}, {}}, static_cast<int>(table.columns.size())});
  row.names_group = true;
  table.rows.push_back(std::move(row));
}

/// Two lines of head; a small job's table makes do with one.
void add_head(const Telling& telling, bool small, document::Table& table) {
  const auto cell = [&](const char* key, int columns = 1) {
    return Cell{document::plain(key == nullptr ? "" : telling.words.say(key)), columns};
  };
  if (small) {
    table.head.push_back(
        {{cell("ledger.number"), cell("ledger.part"), cell("ledger.part-found"), cell("as-left"),
          cell("ledger.surface-found"), cell("as-left"), cell("ledger.letter")}});
    return;
  }
  table.head.push_back({{cell(nullptr), cell(nullptr), cell("ledger.the-part", 2),
                         cell("ledger.its-surface", 2), cell(nullptr)}});
  table.head.push_back(
      {{cell("ledger.number"), cell("ledger.part"), cell("as-found"), cell("as-left"),
        cell("as-found"), cell("as-left"), cell("ledger.letter")}});
}

Text key_to_signs(const Telling& telling) {
  Text text;
  const auto add = [&](Sign sign, const char* key) {
    text.parts.emplace_back(document::SignRun{sign});
    text.parts.emplace_back(document::Run{telling.words.say(key) + "   "});
  };
  add(Sign::original, "key.original");
  add(Sign::same_maker, "key.same-maker");
  add(Sign::other, "key.other");
  add(Sign::missing, "key.missing");
  add(Sign::undetermined, "key.not-determined");
  text.parts.emplace_back(document::LineEnd{});
  text.parts.emplace_back(document::Run{telling.words.say("key.letters")});
  return text;
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
  document::Table table;
  using Align = document::Column::Align;
  table.columns = {{Align::numbers, 21}, {Align::words, 105, true}, {Align::words, 105},
                   {Align::words, 108},  {Align::words, 66},        {Align::words, 51},
                   {Align::numbers, 15}};
  add_head(telling, small, table);
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

std::string stand_first(const Telling& telling, const Finding& finding) {
  if (!finding.assembled.empty()) {
    return telling.words.say("ledger.assembled",
                             {{"count", finding.assembled.front().at_least_reels}});
  }
  const auto& found = finding.found;
  const auto& left = finding.left;
  const bool same = found.original == left.original;
  if (same && found.original == found.places_for) {
    return telling.words.say(
        "ledger.answer-all",
        {{"places", telling.words.spelled(found.places_for)}, {"count", found.places_for}});
  }
  return telling.words.say(same ? "ledger.answer-same" : "ledger.answer",
                           {{"found", telling.words.spelled(found.original, true)},
                            {"places", telling.words.spelled(found.places_for)},
                            {"left", telling.words.spelled(left.original, true)},
                            {"count", found.original}});
}

/// The answer and the table; the chart only where there is room for it.
document::Chapter ledger_chapter(const Telling& telling, bool with_chart) {
  document::Chapter chapter = telling.chapter("first-ledger");
  chapter.ledger = document::Ledger::first;
  const assess::VisitAssessment* last = telling.assessment.last();
  if (last == nullptr || last->originality.rows.empty()) {
    chapter.blocks.emplace_back(telling.sentence(telling.words.say("ledger.no-rows")));
    return chapter;
  }
  const Finding& finding = last->originality;
  chapter.stand_first = stand_first(telling, finding);
  auto figure = with_chart ? chart(telling, finding) : std::nullopt;
  if (figure) chapter.blocks.emplace_back(std::move(*figure));
  document::Table table = ledger(telling, finding, !with_chart);
  if (table.rows.empty()) {
    chapter.blocks.emplace_back(telling.sentence(
        telling.words.say("ledger.nothing-to-list", {{"count", finding.rows.size()}})));
  } else {
    chapter.blocks.emplace_back(std::move(table));
  }
  return chapter;
}

}  // namespace

std::optional<document::Chapter> tell_parts(const Telling& telling) {
  return ledger_chapter(telling, /*with_chart=*/false);
}

std::optional<document::Chapter> tell_first_ledger(const Telling& telling) {
  document::Chapter chapter = ledger_chapter(telling, /*with_chart=*/true);
  chapter.starts_page = true;
  return chapter;
}

}  // namespace winchbook::report
