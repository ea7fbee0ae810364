#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "report/sections.h"
#include "report/table_columns.h"
#include "report/value_words.h"

namespace winchbook::report {
namespace {

using assess::value::AdjustedSale;
using assess::value::Comparable;
using assess::value::Estimate;
using assess::value::Method;
using document::Column;

constexpr std::size_t kMostSales = 40;
constexpr std::size_t kMostExcluded = 16;

/// At most three decimal places.
std::string factor(const Telling& telling, double value) {
  auto units = static_cast<std::int64_t>(std::round(value * 1000));
  int places = 3;
  for (; places > 0 && units % 10 == 0; --places)
    units /= 10;
  return telling.words.number(base::Decimal(units, places));
}

/// "+12.0 %", with a true minus sign.
std::string percent(const Telling& telling, double value) {
  const auto units = static_cast<std::int64_t>(std::round(std::abs(value) * 10));
  return telling.words.say(value < 0 ? "value.less" : "value.more",
                           {{"percent", telling.words.number(base::Decimal(units, 1))}});
}

/// How the figure was come by.
std::string how(const Telling& telling, const Estimate& estimate) {
  const Worth& worth = *telling.worth;
  const std::size_t count = worth.finding.evidence.counted.size();
  if (estimate.method == Method::none) {
    return telling.words.say("value.how-none", {{"count", count}, {"least", worth.rules.least}});
  }
  if (estimate.method == Method::grid) {
    std::vector<std::string> steps;
    for (const auto& one : worth.rules.adjustments) {
      steps.push_back(telling.words.say("value.step-rule",
                                        {{"trait", telling.words.say("value.trait." + one.trait)},
                                         {"percent", factor(telling, one.percent)}}));
    }
    return telling.words.say("value.how-grid",
                             {{"count", count}, {"steps", telling.words.list(steps)}});
  }
  if (estimate.columns.empty()) {
    return telling.words.say("value.how-mean",
                             {{"count", count}, {"interval", worth.rules.interval}});
  }
  return telling.words.say("value.how-regression",
                           {{"count", count},
                            {"traits", trait_list(telling, estimate.columns)},
                            {"interval", worth.rules.interval},
                            {"degrees", estimate.fit->degrees},
                            {"explained", hundredth_words(telling, estimate.fit->r_squared)},
                            {"condition", factor(telling, estimate.fit->condition)}});
}

document::Table sales_table(const Telling& telling, const Estimate& estimate) {
  const auto& counted = telling.worth->finding.evidence.counted;
  const bool grid = estimate.method == Method::grid;
  using Align = Column::Align;
  std::vector<HeadedColumn> columns{{"value.column.date", {Align::words, 84, true}},
                                    {"value.column.recorded", {Align::words, 0}},
                                    {"value.column.brought", {Align::words, grid ? 96.0 : 156.0}}};
  if (grid) {
    columns.push_back({"value.column.steps", {Align::words, 106}});
    columns.push_back({"value.column.adjusted", {Align::numbers, 46}});
    columns.push_back({"value.column.weight", {Align::numbers, 34}});
  }
  document::Table table = table_of(telling, columns);
  table.title = telling.words.say("value.table");
  table.summary = telling.words.say("value.table-summary");
  for (std::size_t i = 0; i < std::min(counted.size(), kMostSales); ++i) {
    const Comparable& one = counted[i];
    document::Row row;
    const auto add = [&](std::string text) {
      row.cells.push_back({document::plain(std::move(text))});
    };
    add(telling.words.date(one.sale.date));
    add(telling.words.joined("join.semicolon", {price_words(telling, one.sale), one.sale.source}));
    add(telling.words.say(
        "value.brought",
        {{"paid", telling.words.money(
                      {base::Decimal(std::llround(one.paid * 100), 2), one.sale.price.currency})},
         {"rate", factor(telling, one.rate)},
         {"index", factor(telling, one.index)},
         {"amount", amount_words(telling, one.amount)}}));
    if (grid && i < estimate.grid.size()) {
      const AdjustedSale& sale = estimate.grid[i];
      std::vector<std::string> steps;
      for (const auto& step : sale.steps)
        steps.push_back(trait_words(telling, step.trait) + " " + percent(telling, step.percent));
      add(steps.empty() ? telling.words.say("value.no-step")
                        : telling.words.joined("join.semicolon", steps));
      add(amount_words(telling, sale.amount));
      add(factor(telling, sale.weight));
    }
    table.rows.push_back(std::move(row));
  }
  if (counted.size() > kMostSales) {
    table.below = document::plain(
        telling.words.say("value.more-sales", {{"count", counted.size() - kMostSales}}));
  }
  return table;
}

/// What the regression found for each trait: how much one step changes the price, and its doubt.
document::Table fit_table(const Telling& telling, const Estimate& estimate) {
  document::Table table =
      table_of(telling, {{"value.column.trait", {Column::Align::words, 84, true}},
                         {"value.column.meaning", {Column::Align::words, 0}},
                         {"value.column.change", {Column::Align::numbers, 84}},
                         {"value.column.doubt", {Column::Align::numbers, 84}}});
  table.title = telling.words.say("value.fit");
  table.summary = telling.words.say("value.fit-summary");
  for (std::size_t i = 0; i < estimate.columns.size(); ++i) {
    const auto trait = estimate.columns[i];
    const double slope = estimate.fit->coefficients.at(i + 1);
    const double error = estimate.fit->errors.at(i + 1);
    const char* meaning = trait == assess::value::Trait::originality ? "value.step.tens"
                          : trait == assess::value::Trait::box       ? "value.step.box"
                                                                     : "value.step.word";
    document::Row row;
    for (std::string text :
         {trait_words(telling, trait), telling.words.say(meaning),
          percent(telling, 100 * std::expm1(slope)),
          telling.words.say(
              "value.give-or-take",
              {{"percent", telling.words.number(base::Decimal(std::llround(1000 * error), 1))}})}) {
      row.cells.push_back({document::plain(std::move(text))});
    }
    table.rows.push_back(std::move(row));
  }
  return table;
}

void add_excluded(const Telling& telling, document::Chapter& chapter) {
  const auto& excluded = telling.worth->finding.evidence.excluded;
  chapter.blocks.emplace_back(document::Subhead{telling.words.say("value.excluded")});
  if (excluded.empty()) {
    document::Paragraph none = telling.sentence(telling.words.say("value.excluded-none"));
    none.manner = document::ParagraphManner::unindented;
    chapter.blocks.emplace_back(std::move(none));
    return;
  }
  document::List list;
  for (std::size_t i = 0; i < std::min(excluded.size(), kMostExcluded); ++i) {
    const auto& sale = excluded[i].sale;
    list.items.push_back(document::plain(telling.words.say(
        "value.excluded-sale",
        {{"date", telling.words.date(sale.date)},
         {"price", price_words(telling, sale)},
         {"source", sale.source.empty() ? telling.words.say("value.no-source") : sale.source},
         {"why", exclusion_words(telling, excluded[i])}})));
  }
  chapter.blocks.emplace_back(std::move(list));
  if (excluded.size() > kMostExcluded) {
    chapter.blocks.emplace_back(telling.sentence(
        telling.words.say("value.more-excluded", {{"count", excluded.size() - kMostExcluded}})));
  }
}

std::string trial(const Telling& telling) {
  const auto& finding = telling.worth->finding;
  std::vector<std::string> sentences;
  if (finding.trial) sentences.push_back(trial_words(telling));
  if (finding.with_outliers) {
    sentences.push_back(telling.words.say(
        "value.with-outliers", {{"amount", amount_words(telling, *finding.with_outliers, 0)}}));
  }
  return joined(sentences);
}

}  // namespace

std::optional<document::Chapter> tell_value_sales(const Telling& telling) {
  if (telling.worth == nullptr || telling.worth->finding.estimates.empty()) return std::nullopt;
  const Estimate& estimate = explained(telling);
  document::Chapter chapter = telling.chapter("value-sales");
  chapter.stand_first = telling.words.say(
      "value-sales.answer", {{"count", telling.worth->finding.evidence.counted.size()}});
  std::vector<std::string> sentences{how(telling, estimate)};
  for (const auto note : estimate.notes)
    sentences.push_back(note_words(telling, estimate, note));
  if (telling.worth->older > 0) {
    sentences.push_back(telling.words.say(
        "value.older", {{"count", telling.worth->older}, {"most", telling.worth->rules.most}}));
  }
  document::Paragraph said = telling.sentence(joined(sentences));
  said.manner = document::ParagraphManner::small;
  if (!telling.worth->finding.evidence.counted.empty()) {
    said.beside.emplace_back(sales_chart_key(telling));
  }
  chapter.blocks.emplace_back(std::move(said));
  if (!telling.worth->finding.evidence.counted.empty()) {
    chapter.blocks.emplace_back(document::Subhead{telling.words.say("value.chart-title")});
    chapter.blocks.emplace_back(sales_chart(telling));
    chapter.blocks.emplace_back(sales_table(telling, estimate));
  }
  if (estimate.fit && !estimate.columns.empty()) {
    chapter.blocks.emplace_back(fit_table(telling, estimate));
  }
  if (const std::string tried = trial(telling); !tried.empty()) {
    chapter.blocks.emplace_back(document::Subhead{telling.words.say("value.trial-title")});
    document::Paragraph result = telling.sentence(tried);
    result.manner = document::ParagraphManner::unindented;
    chapter.blocks.emplace_back(std::move(result));
  }
  add_excluded(telling, chapter);
  return chapter;
}

}  // namespace winchbook::report
