#include <algorithm>

#include "report/sections.h"

namespace winchbook::report {
namespace {

using document::DatingChart;
using record::EndFirmness;
using record::Marking;

/// The mark as it is quoted: its first line, or what is said where it is withheld.
std::string quoted(const Telling& telling, const Marking& mark) {
  const std::string* text = record::told(mark.text);
  if (text == nullptr) return telling.words.say("mark.withheld");
  return telling.words.say("mark.quoted", {{"text", text->substr(0, text->find('\n'))}});
}

/// The same with every line of it, as it stands on the piece.
document::Text quoted_whole(const Telling& telling, const Marking& mark) {
  const std::string* text = record::told(mark.text);
  if (text == nullptr) return document::plain(telling.words.say("mark.withheld"));
  const std::string whole = telling.words.say("mark.quoted", {{"text", *text}});
  document::Text lines;
  for (std::size_t at = 0; at <= whole.size();) {
    const std::size_t end = std::min(whole.find('\n', at), whole.size());
    if (at > 0) lines.parts.emplace_back(document::LineEnd{});
    lines.parts.emplace_back(document::Run{whole.substr(at, end - at)});
    at = end + 1;
  }
  return lines;
}

double year_start(const base::Day& day) {
  return static_cast<double>(day.year) + (day.month - 1) / 12.0 + (day.day - 1) / 365.0;
}

DatingChart::End firmness(const std::optional<record::MarkEnd>& end) {
  if (!end) return DatingChart::End::none;
  return end->firmness == EndFirmness::hard ? DatingChart::End::hard : DatingChart::End::soft;
}

/// A mark on a piece known not to have been born on the reel says nothing about the reel.
bool counts(const Telling& telling, const Marking& mark) {
  const record::Piece* piece = find(telling.record, mark.piece);
  return piece == nullptr || piece->born_here.answer != record::BornHere::no;
}

DatingChart::Mark bar_of(const Telling& telling, const Marking& mark) {
  DatingChart::Mark bar;
  bar.name = quoted(telling, mark);
  const auto first = mark.says->not_before ? mark.says->not_before->date.earliest() : std::nullopt;
  const auto last = mark.says->not_after ? mark.says->not_after->date.latest() : std::nullopt;
  if (first) {
    bar.first = year_start(*first);
    bar.first_end = firmness(mark.says->not_before);
  }
  if (last) {
    bar.last = year_start(*last) + 1.0 / 365.0;
    bar.last_end = firmness(mark.says->not_after);
  }
  if (!counts(telling, mark)) bar.left_out = telling.words.say("dating.left-out");
  return bar;
}

bool names_years(const Marking& mark) {
  return mark.says && (mark.says->not_before || mark.says->not_after);
}

/// The years between which the bench placed the reel, if it did.
std::optional<DatingChart::Range> window(const Telling& telling) {
  const auto& made = telling.record.reel.made;
  if (!made || !made->date.earliest() || !made->date.latest()) return std::nullopt;
  const auto first = static_cast<int>(made->date.earliest()->year);
  const auto last = static_cast<int>(made->date.latest()->year);
  return DatingChart::Range{first, last,
                            telling.words.say("dating.window", {{"first", std::to_string(first)},
                                                                {"last", std::to_string(last)}})};
}

std::string end_words(const Telling& telling, const std::optional<record::MarkEnd>& end) {
  if (!end) return telling.words.say("dating.no-end");
  const bool hard = end->firmness == EndFirmness::hard;
  return telling.words.say(hard ? "dating.hard-end" : "dating.soft-end",
                           {{"date", telling.words.date(end->date)}});
}

/// What a bar of the chart shows, for a reader who cannot see it.
std::string spoken_ends(const Telling& telling, const Marking& mark) {
  return telling.words.say("dating.spoken", {{"mark", quoted(telling, mark)},
                                             {"first", end_words(telling, mark.says->not_before)},
                                             {"last", end_words(telling, mark.says->not_after)}});
}

std::optional<document::ChartFigure> chart(const Telling& telling) {
  DatingChart chart;
  for (const Marking& mark : telling.record.markings) {
    if (names_years(mark)) chart.marks.push_back(bar_of(telling, mark));
  }
  if (chart.marks.empty()) return std::nullopt;
  std::stable_partition(chart.marks.begin(), chart.marks.end(),
                        [](const DatingChart::Mark& mark) { return mark.left_out.empty(); });
  chart.window = window(telling);
  chart.key = {telling.words.say("dating.key-hard"), telling.words.say("dating.key-soft"),
               telling.words.say("dating.no-end"), telling.words.say("dating.key-left-out")};
  std::string spoken = telling.words.say("dating.chart", {{"count", chart.marks.size()}});
  for (const Marking& mark : telling.record.markings) {
    if (names_years(mark)) spoken += " " + spoken_ends(telling, mark);
  }
  if (chart.window) {
    spoken += " " + telling.words.say("dating.chart-window", {{"window", chart.window->words}});
  }
  return document::ChartFigure{std::move(chart), std::move(spoken)};
}

document::Row row_of(const Telling& telling, const Marking& mark) {
  std::string where = telling.piece_name(mark.piece);
  if (!mark.where.empty()) where += ", " + mark.where;
  const std::string whose = "whose." + std::string(record::word_of(mark.whose));
  document::Row row;
  row.cells.push_back({quoted_whole(telling, mark)});
  row.cells.push_back({document::plain(std::move(where))});
  row.cells.push_back({document::plain(telling.words.say(whose))});
  const bool says = mark.says && !mark.says->because.empty();
  row.cells.push_back({telling.text(says ? mark.says->because : mark.note)});
  return row;
}

/// A mark on a piece that this bench put in says nothing of the reel that came.
bool put_in_by_bench(const Telling& telling, const Marking& mark) {
  return std::any_of(telling.record.fittings.begin(), telling.record.fittings.end(),
                     [&](const record::Fitting& fitting) {
                       return fitting.piece == mark.piece &&
                              std::holds_alternative<record::ByBench>(fitting.by);
                     });
}

/// The marks that came with the reel, or those on what the bench put in: never in one table.
std::optional<document::Table> table(const Telling& telling, bool of_the_bench) {
  document::Table table;
  using Align = document::Column::Align;
  table.columns = {
      {Align::words, 132, true}, {Align::words, 117}, {Align::words, 54}, {Align::words, 150}};
  table.dashed = of_the_bench;
  document::Row head;
  for (const char* key : {"dating.as-read", "dating.where", "dating.whose", "dating.because"}) {
    head.cells.push_back({document::plain(telling.words.say(key))});
  }
  table.head.push_back(std::move(head));
  for (const Marking& mark : telling.record.markings) {
    if (put_in_by_bench(telling, mark) == of_the_bench) {
      table.rows.push_back(row_of(telling, mark));
    }
  }
  if (table.rows.empty()) return std::nullopt;
  table.title = telling.words.say(of_the_bench ? "dating.marks-of-bench" : "dating.marks");
  table.summary = telling.words.say("dating.table-summary");
  return table;
}

std::string stand_first(const Telling& telling) {
  const auto& made = telling.record.reel.made;
  if (telling.record.markings.empty()) return telling.words.say("dating.no-marks");
  if (!made) return telling.words.say("dating.marks-only");
  const auto count =
      std::count_if(telling.record.markings.begin(), telling.record.markings.end(), names_years);
  return telling.words.say("dating.answer",
                           {{"date", telling.words.date(made->date)},
                            {"sure", std::string(record::word_of(made->certainty))},
                            {"count", static_cast<int>(count)},
                            {"number", telling.words.spelled(count, true)}});
}

}  // namespace

std::optional<document::Chapter> tell_dating(const Telling& telling) {
  document::Chapter chapter = telling.chapter("dating");
  chapter.stand_first = stand_first(telling);
  const auto& made = telling.record.reel.made;
  const bool says_why = made && !made->evidence.because.empty();
  // Without marks the sentence above is the whole chapter, unless the bench gave other reasons.
  if (telling.record.markings.empty() && !says_why) return chapter;
  if (auto figure = chart(telling)) chapter.blocks.emplace_back(std::move(*figure));
  document::Paragraph how = telling.sentence(telling.words.say("dating.how"));
  if (says_why) how = telling.paragraph(made->evidence.because);
  how.beside.emplace_back(document::SideNote{document::with_lead(
      telling.words.say("dating.hard-and-soft"), telling.words.say("dating.hard-and-soft-means"))});
  chapter.blocks.emplace_back(std::move(how));
  for (const bool of_the_bench : {false, true}) {
    if (auto marks = table(telling, of_the_bench)) chapter.blocks.emplace_back(std::move(*marks));
  }
  return chapter;
}

}  // namespace winchbook::report
