#include "report/dating_chart.h"

#include <algorithm>
#include <utility>

#include "report/dating_words.h"

namespace winchbook::report {
namespace {

namespace dating = assess::dating;
using dating::Evidence;
using dating::Finding;
using document::DatingChart;
using record::EndFirmness;

/// More bars than these say nothing more.
constexpr std::size_t kMostBars = 48;
/// Years that an axis can show; what lies beyond is told in the table.
constexpr std::int64_t kFirstYear = 1000;
constexpr std::int64_t kLastYear = 2999;
/// Columns that would be lower than a hair are not drawn.
constexpr double kLeastColumn = 0.01;

bool on_axis(const std::optional<dating::End>& end) {
  return !end || (end->day.year >= kFirstYear && end->day.year <= kLastYear);
}

bool drawable(const Evidence& evidence) {
  if (!evidence.not_before && !evidence.not_after) return false;
  return on_axis(evidence.not_before) && on_axis(evidence.not_after);
}

/// The evidence that is drawn: all, or what matters most where there is too much.
std::vector<std::size_t> drawn(const Finding& finding) {
  std::vector<std::size_t> bars;
  for (std::size_t i = 0; i < finding.evidence.size(); ++i) {
    if (drawable(finding.evidence[i]) && speaks_of_the_reel(finding, i)) bars.push_back(i);
  }
  if (bars.size() <= kMostBars) return bars;
  std::vector<int> rank(finding.evidence.size(), 2);
  for (const dating::Suspect& suspect : finding.suspects) {
    for (const std::size_t i : suspect.evidence)
      rank[i] = 1;
  }
  for (const dating::Step& step : finding.steps)
    rank[step.evidence] = 0;
  std::stable_sort(bars.begin(), bars.end(),
                   [&](std::size_t a, std::size_t b) { return rank[a] < rank[b]; });
  bars.resize(kMostBars);
  std::sort(bars.begin(), bars.end());
  return bars;
}

double year_start(const base::Day& day) {
  const std::int64_t new_year = base::day_number({day.year, 1, 1});
  const std::int64_t days = base::day_number({day.year + 1, 1, 1}) - new_year;
  return static_cast<double>(day.year) +
         static_cast<double>(base::day_number(day) - new_year) / static_cast<double>(days);
}

DatingChart::End firmness(const dating::End& end) {
  return end.firmness == EndFirmness::hard ? DatingChart::End::hard : DatingChart::End::soft;
}

DatingChart::Mark bar_of(const Telling& telling, std::size_t i) {
  const Evidence& evidence = telling.assessment.dating.evidence[i];
  DatingChart::Mark bar;
  bar.name = evidence_name(telling, evidence);
  if (evidence.not_before) {
    bar.first = year_start(evidence.not_before->day);
    bar.first_end = firmness(*evidence.not_before);
  }
  if (evidence.not_after) {
    bar.last = year_start(evidence.not_after->day) + 1.0 / 365.0;
    bar.last_end = firmness(*evidence.not_after);
  }
  if (const std::string why = why_left_out(telling, i); !why.empty())
    bar.left_out = telling.words.say("dating.left-out", {{"why", why}});
  return bar;
}

/// "1934 to 1938", or the one year.
std::string from_to(const Telling& telling, std::int64_t first, std::int64_t last) {
  if (first == last) return std::to_string(first);
  return telling.words.say("dating.window",
                           {{"first", std::to_string(first)}, {"last", std::to_string(last)}});
}

std::optional<DatingChart::Range> window(const Telling& telling) {
  const dating::Window& window = telling.assessment.dating.window;
  if (!window.not_before || !window.not_after || !no_year_fits(telling).empty())
    return std::nullopt;
  const std::int64_t first = window.not_before->day.year;
  const std::int64_t last = window.not_after->day.year;
  if (first < kFirstYear || last > kLastYear) return std::nullopt;
  return DatingChart::Range{
      static_cast<int>(first), static_cast<int>(last),
      telling.words.say("dating.the-window") + "\n" + from_to(telling, first, last)};
}

std::optional<DatingChart::Range> range(const Telling& telling, const char* key,
                                        const std::optional<dating::YearRange>& of) {
  if (!of) return std::nullopt;
  return DatingChart::Range{
      static_cast<int>(of->first), static_cast<int>(of->last),
      telling.words.say(key, {{"years", from_to(telling, of->first, of->last)}})};
}

void add_profile(const Telling& telling, DatingChart& chart) {
  const Finding& finding = telling.assessment.dating;
  const dating::YearProfile& profile = finding.profile;
  if (profile.size() < 2 || profile.front().first < kFirstYear || profile.back().first > kLastYear)
    return;
  const double most =
      std::max_element(profile.begin(), profile.end(), [](const auto& a, const auto& b) {
        return a.second < b.second;
      })->second;
  for (const auto& [year, share] : profile) {
    if (share >= most * kLeastColumn) chart.profile.emplace_back(static_cast<int>(year), share);
  }
  chart.profile_name = telling.words.say("dating.profile");
  chart.profile_note = telling.words.say("dating.profile-note");
  chart.half = range(telling, "dating.half", finding.range50);
  chart.nine_tenths = range(telling, "dating.nine-tenths", finding.range90);
}

std::string end_words(const Telling& telling, const std::optional<dating::End>& end) {
  if (!end) return telling.words.say("dating.no-end");
  const bool hard = end->firmness == EndFirmness::hard;
  return telling.words.say(hard ? "dating.hard-end" : "dating.soft-end",
                           {{"date", telling.words.day(end->day)}});
}

/// What a bar shows, for a reader who cannot see it.
std::string spoken_bar(const Telling& telling, std::size_t i) {
  const Evidence& evidence = telling.assessment.dating.evidence[i];
  const char* ends = evidence.not_before  ? evidence.not_after ? "both" : "first"
                     : evidence.not_after ? "last"
                                          : "none";
  std::string spoken =
      telling.words.say("dating.spoken", {{"mark", evidence_name(telling, evidence)},
                                          {"ends", ends},
                                          {"first", end_words(telling, evidence.not_before)},
                                          {"last", end_words(telling, evidence.not_after)}});
  const std::string why = why_left_out(telling, i);
  if (why.empty()) return spoken;
  return joined(
      {spoken, telling.words.say("dating.spoken-left-out",
                                 {{"why", telling.words.say("dating.left-out", {{"why", why}})}})});
}

}  // namespace

std::optional<document::ChartFigure> dating_chart(const Telling& telling) {
  const std::vector<std::size_t> bars = drawn(telling.assessment.dating);
  if (bars.empty()) return std::nullopt;
  DatingChart chart;
  std::string spoken = telling.words.say("dating.chart", {{"count", bars.size()}});
  for (const std::size_t i : bars) {
    chart.marks.push_back(bar_of(telling, i));
    spoken += " " + spoken_bar(telling, i);
  }
  std::stable_partition(chart.marks.begin(), chart.marks.end(),
                        [](const DatingChart::Mark& mark) { return mark.left_out.empty(); });
  chart.window = window(telling);
  chart.conflict = no_year_fits(telling);
  chart.key = {telling.words.say("dating.key-hard"), telling.words.say("dating.key-soft"),
               telling.words.say("dating.no-end"), telling.words.say("dating.key-left-out")};
  add_profile(telling, chart);
  if (chart.window) {
    const std::string years = from_to(telling, chart.window->first, chart.window->last);
    spoken = joined({spoken, telling.words.say("dating.chart-window", {{"window", years}})});
  }
  spoken = joined({spoken, chart.conflict});
  for (const auto& one : {chart.half, chart.nine_tenths}) {
    if (one)
      spoken = joined({spoken, telling.words.say("dating.chart-range", {{"range", one->words}})});
  }
  return document::ChartFigure{std::move(chart), std::move(spoken)};
}

std::size_t marks_not_drawn(const Telling& telling) {
  const Finding& finding = telling.assessment.dating;
  std::size_t speaking = 0;
  for (std::size_t i = 0; i < finding.evidence.size(); ++i) {
    const Evidence& evidence = finding.evidence[i];
    if ((evidence.not_before || evidence.not_after) && speaks_of_the_reel(finding, i)) ++speaking;
  }
  return speaking - drawn(finding).size();
}

}  // namespace winchbook::report
