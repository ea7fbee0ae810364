#include <algorithm>
#include <cmath>
#include <utility>

#include "report/value_words.h"

namespace winchbook::report {
namespace {

using assess::value::Estimate;
using assess::value::Method;
using assess::value::RoundPrice;

constexpr std::size_t kMostBars = 12;

/// Every sale adjusted to the reel, and the reel's own middle and range among them.
document::BarChart each_sale(const Telling& telling) {
  const Worth& worth = *telling.worth;
  const Estimate& estimate = explained(telling);
  const auto& counted = worth.finding.evidence.counted;
  std::vector<std::pair<double, std::string>> bars;
  double most = estimate.high;
  for (std::size_t i = 0; i < counted.size(); ++i) {
    const double amount = i < estimate.grid.size() ? estimate.grid[i].amount : counted[i].amount;
    bars.emplace_back(amount, telling.words.date(counted[i].sale.date));
    most = std::max(most, amount);
  }
  std::stable_sort(bars.begin(), bars.end(),
                   [](const auto& a, const auto& b) { return a.first > b.first; });
  document::BarChart chart;
  for (const auto& [amount, name] : bars) {
    chart.bars.push_back({name, 100 * amount / most, amount_words(telling, amount), false});
  }
  if (estimate.method != Method::none) {
    chart.bars.push_back(
        {telling.words.say("value.this-reel"), 100 * estimate.high / most,
         telling.words.say("value.range-only",
                           {{"low", rounded_words(telling, estimate.low, RoundPrice::down)},
                            {"high", rounded_words(telling, estimate.high, RoundPrice::up)}}),
         true, 100 * estimate.low / most});
  }
  return chart;
}

/// 1, 2, 2.5 or 5 times a power of ten, so that `span` makes about eight bands.
double band_of(double span) {
  constexpr double kBands = 8;
  const double least = span / kBands;
  const double power = std::pow(10, std::floor(std::log10(least)));
  for (const double step : {1.0, 2.0, 2.5, 5.0}) {
    if (step * power >= least) return step * power;
  }
  return 10 * power;
}

/// How many sales lie in each band of prices; filled where the reel's range reaches.
document::BarChart bands(const Telling& telling) {
  const Estimate& estimate = explained(telling);
  std::vector<double> amounts;
  for (const auto& one : telling.worth->finding.evidence.counted)
    amounts.push_back(one.amount);
  const auto [least, most] = std::minmax_element(amounts.begin(), amounts.end());
  const double band = band_of(std::max(*most - *least, *most / 100));
  const double first = std::floor(*least / band);
  const auto count = static_cast<std::size_t>(std::floor(*most / band) - first) + 1;
  std::vector<std::size_t> sales(count);
  for (const double amount : amounts)
    ++sales[static_cast<std::size_t>(std::floor(amount / band) - first)];
  const double tallest = static_cast<double>(*std::max_element(sales.begin(), sales.end()));
  document::BarChart chart;
  for (std::size_t i = 0; i < count; ++i) {
    const double low = (first + static_cast<double>(i)) * band;
    const bool reached =
        estimate.method != Method::none && low < estimate.high && low + band > estimate.low;
    const int places = band < 1 ? 2 : 0;
    chart.bars.push_back(
        {telling.words.say("value.band", {{"low", amount_words(telling, low, places)},
                                          {"high", amount_words(telling, low + band, places)}}),
         100 * static_cast<double>(sales[i]) / tallest,
         telling.words.say("value.band-sales", {{"count", sales[i]}}), reached});
  }
  return chart;
}

bool few(const Telling& telling) {
  return telling.worth->finding.evidence.counted.size() <= kMostBars;
}

std::string in_words(const Telling& telling, const document::BarChart& chart) {
  std::vector<std::string> bars;
  for (const auto& bar : chart.bars) {
    bars.push_back(telling.words.say("value.bar", {{"name", bar.name}, {"figures", bar.figures}}));
  }
  return joined({telling.words.say("value.chart"), telling.words.list(bars) + "."});
}

}  // namespace

document::ChartFigure sales_chart(const Telling& telling) {
  document::BarChart chart = few(telling) ? each_sale(telling) : bands(telling);
  std::string alternative = in_words(telling, chart);
  return {std::move(chart), std::move(alternative), document::Width::full};
}

document::SideNote sales_chart_key(const Telling& telling) {
  const Estimate& estimate = explained(telling);
  const char* key = estimate.method == Method::none ? "value.chart-key-none"
                    : !few(telling)                 ? "value.chart-key-bands"
                    : estimate.grid.empty()         ? "value.chart-key-sales"
                                                    : "value.chart-key-adjusted";
  return {document::plain(telling.words.say(key))};
}

}  // namespace winchbook::report
