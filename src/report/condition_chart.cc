#include "report/condition_chart.h"

#include <array>
#include <utility>

namespace winchbook::report {
namespace {

using assess::condition::kStateAxes;
using assess::condition::Position;
using assess::condition::Readings;
using document::ConditionChart;
using document::Sign;

document::Share share_of(const Position& position) {
  return {static_cast<double>(position.low.rounded(10000)) / 100.0,
          static_cast<double>(position.high.rounded(10000)) / 100.0};
}

std::string surface_fact(const Telling& telling, const Readings& at) {
  if (!at.finish_left.share) return telling.words.say("condition.not-examined");
  return telling.words.say("condition.surface-fact",
                           {{"share", telling.hundredths(*at.finish_left.share)}});
}

std::string structure_fact(const Telling& telling, const Readings& at) {
  if (!at.structure.examined) return telling.words.say("condition.not-examined");
  return telling.words.say("condition.structure-fact", {{"count", at.structure.faults()}});
}

std::string working_fact(const Telling& telling, const Readings& at) {
  // Only what was tried at that end of the stay: a test made once says nothing of the other.
  const int tried = at.working.tests - at.working.not_tested;
  if (tried == 0) return telling.words.say("condition.not-tested");
  return telling.words.say("condition.working-fact",
                           {{"passed", at.working.as_made}, {"tests", tried}});
}

std::string completeness_fact(const Telling& telling, const Readings& at) {
  return telling.words.say("condition.completeness-fact",
                           {{"filled", at.completeness.filled}, {"seats", at.completeness.seats}});
}

/// "as found, 5 March 2026"
std::string moment(const Telling& telling, const char* key,
                   const std::optional<base::EdtfDate>& date) {
  return telling.words.joined("join.comma",
                              {telling.words.say(key), date ? telling.words.date(*date) : ""});
}

/// How an axis is drawn, in the order of the axes.
struct AxisRow {
  Position (*position)(const Readings&);
  std::string (*fact)(const Telling&, const Readings&);
};

constexpr std::array<AxisRow, kStateAxes.size()> kRows{{
    {[](const Readings& at) { return at.finish_left.position; }, surface_fact},
    {[](const Readings& at) { return at.structure.position; }, structure_fact},
    {[](const Readings& at) { return at.working.position; }, working_fact},
    {[](const Readings& at) { return at.completeness.position; }, completeness_fact},
}};

}  // namespace

// A word that spans the whole of its axis at both ends says that nobody looked.
bool is_examined(const assess::condition::Finding& finding, std::size_t axis) {
  const auto whole = [](const Position& at) {
    return at.low == base::Ratio(0, 1) && at.high == base::Ratio(1, 1);
  };
  return !whole(kRows.at(axis).position(finding.found)) ||
         !whole(kRows.at(axis).position(finding.left));
}

std::optional<document::ChartFigure> condition_chart(const Telling& telling) {
  const assess::VisitAssessment* last = telling.assessment.last();
  if (last == nullptr) return std::nullopt;
  const auto& condition = last->condition;
  ConditionChart chart;
  std::vector<std::string> spoken;
  for (std::size_t i = 0; i < kRows.size(); ++i) {
    if (!is_examined(condition, i)) continue;
    const AxisRow& row = kRows[i];
    const std::string key = "condition." + std::string(kStateAxes[i].name);
    ConditionChart::Axis axis{telling.words.say(key), telling.words.say(key + ".what")};
    const auto& best_first = kStateAxes[i].words;
    for (auto word = best_first.rbegin(); word != best_first.rend(); ++word)
      axis.words.push_back(telling.words.say(key + "." + std::string(*word)));
    const std::string found = row.fact(telling, condition.found);
    const std::string left = row.fact(telling, condition.left);
    axis.marks = {{Sign::found, share_of(row.position(condition.found)), found},
                  {Sign::left, share_of(row.position(condition.left)), left}};
    spoken.push_back(telling.words.say("condition.spoken",
                                       {{"axis", axis.name}, {"found", found}, {"left", left}}));
    chart.axes.push_back(std::move(axis));
  }
  if (chart.axes.empty()) return std::nullopt;
  chart.key.parts.emplace_back(document::SignRun{Sign::found});
  chart.key.parts.emplace_back(
      document::Run{moment(telling, "as-found", telling.visit.findings.found_on) + "   "});
  chart.key.parts.emplace_back(document::SignRun{Sign::left});
  chart.key.parts.emplace_back(
      document::Run{moment(telling, "as-left", telling.visit.findings.left_on) + "   " +
                    telling.words.say("condition.key")});
  return document::ChartFigure{std::move(chart), joined(spoken)};
}

}  // namespace winchbook::report
