#include "report/originality_chart.h"

#include <utility>

namespace winchbook::report {
namespace {

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

}  // namespace

FactList told_chart(const assess::originality::Finding& finding) {
  FactList told;
  const auto add = [&](const char* id, const assess::originality::Index& index) {
    if (!index.found || !index.left) return;
    for (document::Fact& fact : told_index(id, index))
      told.push_back(std::move(fact));
  };
  add("original", finding.original);
  add("untouched_surface", finding.untouched_surface);
  if (finding.way_back.original_restored)
    told.push_back(told_share("original.restored", finding.way_back.original_restored));
  return told;
}

std::optional<document::ChartFigure> originality_chart(
    const Telling& telling, const assess::originality::Finding& finding) {
  document::ChartFigure figure{document::OriginalityChart{}, ""};
  add_question(telling, "ledger.parts", finding.original, figure);
  add_question(telling, "ledger.surfaces", finding.untouched_surface, figure);
  auto& chart = std::get<document::OriginalityChart>(figure.chart);
  if (chart.questions.empty()) return std::nullopt;
  std::string below = telling.words.say("ledger.hatched");
  if (finding.way_back.original_restored) {
    below += " " + telling.words.say(
                       "ledger.refit",
                       {{"share", telling.hundredths(*finding.way_back.original_restored)}});
  }
  chart.below = document::plain(joined({below, telling.judged("ledger.judged")}));
  return figure;
}

}  // namespace winchbook::report
