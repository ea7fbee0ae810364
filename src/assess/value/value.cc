#include "assess/value/value.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace winchbook::assess::value {
namespace {

using knowledge::Adjustment;
using knowledge::PriceRules;

constexpr double kYearsWeight = 0.1;
constexpr std::size_t kEnoughForQuantiles = 10;

Trait trait_of(std::string_view word) {
  constexpr std::array kWords{"surface",      "structure",   "working",
                              "completeness", "originality", "box"};
  const auto at = std::find(kWords.begin(), kWords.end(), word) - kWords.begin();
  return static_cast<Trait>(at);
}

double years_before(const Sale& sale, const base::Day& day) {
  const auto first = sale.date.earliest();
  constexpr double kDays = 365.2425;
  return first ? static_cast<double>(base::day_number(day) - base::day_number(*first)) / kDays : 0;
}

void note(Estimate& estimate, Note what) {
  if (std::find(estimate.notes.begin(), estimate.notes.end(), what) == estimate.notes.end()) {
    estimate.notes.push_back(what);
  }
}

/// A trait's values in all counted sales; empty when one of them does not tell it.
std::vector<double> column(const std::vector<Comparable>& counted, Trait trait) {
  std::vector<double> values;
  for (const Comparable& one : counted) {
    const auto& told = one.sale.state[trait];
    if (!told) return {};
    values.push_back(*told);
  }
  return values;
}

/// The traits on which the prices can be fitted: told by all, not the same in all.
std::vector<Trait> varying(const std::vector<Comparable>& counted) {
  std::vector<Trait> traits;
  for (int i = 0; i < kTraits; ++i) {
    const auto values = column(counted, static_cast<Trait>(i));
    if (values.empty()) continue;
    const auto [least, most] = std::minmax_element(values.begin(), values.end());
    if (*most > *least) traits.push_back(static_cast<Trait>(i));
  }
  return traits;
}

Estimate grid(const Question& question, const State& reel, const std::vector<Comparable>& counted,
              const PriceRules& rules) {
  Estimate estimate;
  estimate.method = Method::grid;
  std::vector<Weighted> weighted;
  std::vector<double> amounts;
  for (std::size_t i = 0; i < counted.size(); ++i) {
    AdjustedSale sale = adjust(counted[i], reel, question, rules.adjustments);
    sale.comparable = i;
    weighted.push_back({sale.amount, sale.weight});
    amounts.push_back(sale.amount);
    estimate.grid.push_back(std::move(sale));
  }
  estimate.middle = weighted_median(weighted).middle();
  const bool many = amounts.size() >= kEnoughForQuantiles;
  estimate.low = many ? quantile(amounts, 0.1) : *std::min_element(amounts.begin(), amounts.end());
  estimate.high = many ? quantile(amounts, 0.9) : *std::max_element(amounts.begin(), amounts.end());
  return estimate;
}

/// Says where the reel lies beside the sales.
void compare_with_sales(const State& reel, const std::vector<Comparable>& counted,
                        Estimate& estimate) {
  for (int i = 0; i < kTraits; ++i) {
    const auto trait = static_cast<Trait>(i);
    if (!reel[trait]) {
      note(estimate, Note::not_told);
      continue;
    }
    double least = 0;
    double most = 0;
    bool any = false;
    for (const Comparable& one : counted) {
      const auto& told = one.sale.state[trait];
      if (!told) continue;
      least = any ? std::min(least, *told) : *told;
      most = any ? std::max(most, *told) : *told;
      any = true;
    }
    if (!any) continue;
    if (*reel[trait] < least || *reel[trait] > most) {
      note(estimate, least == most ? Note::alike : Note::beyond);
    }
  }
}

/// The log price fitted on the traits; empty with a note when that cannot be done.
std::optional<Estimate> regression(const State& reel, const std::vector<Comparable>& counted,
                                   const PriceRules& rules, std::vector<Note>& notes) {
  const std::vector<Trait> traits = varying(counted);
  const auto needed = static_cast<std::size_t>(
      std::max(rules.regression, rules.per_column * (static_cast<int>(traits.size()) + 1)));
  if (counted.size() < needed) {
    notes.push_back(Note::too_few_to_fit);
    return std::nullopt;
  }
  Estimate estimate;
  std::vector<std::vector<double>> columns;
  std::vector<double> row;
  for (const Trait trait : traits) {
    if (!reel[trait]) {
      notes.push_back(Note::not_told);
      return std::nullopt;
    }
    columns.push_back(column(counted, trait));
    row.push_back(*reel[trait]);
  }
  std::vector<double> logs;
  for (const Comparable& one : counted)
    logs.push_back(std::log(one.amount));
  const auto fitted = fit(columns, logs);
  const Fit* good = std::get_if<Fit>(&fitted);
  if (good == nullptr || good->condition > rules.condition) {
    notes.push_back(Note::collinear);
    return std::nullopt;
  }
  const Prediction prediction = predict(*good, row);
  const double reach = student_t(good->degrees, (100 - rules.interval) / 200.0) * prediction.sd;
  estimate.method = Method::regression;
  estimate.low = std::exp(prediction.mean - reach);
  estimate.middle = std::exp(prediction.mean);
  estimate.high = std::exp(prediction.mean + reach);
  estimate.fit = *good;
  estimate.columns = traits;
  return estimate;
}

Estimate estimate_of(const Question& question, const State& reel,
                     const std::vector<Comparable>& counted, const PriceRules& rules) {
  Estimate estimate;
  if (counted.size() < static_cast<std::size_t>(rules.least)) {
    note(estimate, Note::too_few);
    return estimate;
  }
  std::vector<Note> notes;
  if (auto fitted = regression(reel, counted, rules, notes)) {
    estimate = std::move(*fitted);
  } else {
    estimate = grid(question, reel, counted, rules);
  }
  for (const Note one : notes)
    note(estimate, one);
  compare_with_sales(reel, counted, estimate);
  for (const Comparable& one : counted) {
    if (!one.indexed) note(estimate, Note::no_index);
    if (one.estimated_index) note(estimate, Note::estimated_index);
  }
  return estimate;
}

/// Each sale told from the others. A regression's residual without the row itself is e / (1 − h).
std::optional<Trial> tried(const Question& question, const Estimate& estimate,
                           const std::vector<Comparable>& counted, const PriceRules& rules) {
  std::vector<double> errors;
  if (estimate.method == Method::regression) {
    for (std::size_t i = 0; i < estimate.fit->residuals.size(); ++i) {
      const double left = 1 - estimate.fit->leverages[i];
      constexpr double kAlone = 1e-9;  // a row that alone carries a coefficient cannot be told
      if (left < kAlone) continue;
      errors.push_back(std::abs(std::expm1(-estimate.fit->residuals[i] / left)));
    }
  } else if (estimate.method == Method::grid) {
    if (counted.size() <= static_cast<std::size_t>(rules.least)) return std::nullopt;
    for (std::size_t i = 0; i < counted.size(); ++i) {
      std::vector<Comparable> others = counted;
      others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
      const double told = grid(question, counted[i].sale.state, others, rules).middle;
      errors.push_back(std::abs(told / counted[i].amount - 1));
    }
  }
  if (errors.empty()) return std::nullopt;
  return Trial{static_cast<int>(errors.size()), quantile(errors, 0.5), quantile(errors, 0.9)};
}

}  // namespace

AdjustedSale adjust(const Comparable& sale, const State& reel, const Question& question,
                    const std::vector<Adjustment>& adjustments) {
  AdjustedSale adjusted;
  adjusted.amount = sale.amount;
  double gross = 0;
  for (const Adjustment& one : adjustments) {
    const Trait trait = trait_of(one.trait);
    const auto& theirs = sale.sale.state[trait];
    const auto& ours = reel[trait];
    if (!theirs || !ours) {
      ++adjusted.not_told;
      continue;
    }
    const double steps = *theirs - *ours;
    if (steps == 0) continue;
    // Never below nothing: many steps down are many percentages, each of what is left.
    const double factor =
        steps > 0 ? 1 + one.percent * steps / 100 : std::pow(1 - one.percent / 100, -steps);
    adjusted.amount *= factor;
    gross += std::abs(factor - 1);
    adjusted.steps.push_back({trait, steps, (factor - 1) * 100, adjusted.amount});
  }
  const double age = std::max(0.0, years_before(sale.sale, question.as_of));
  adjusted.weight = 1 / (1 + gross + kYearsWeight * (age + adjusted.not_told));
  return adjusted;
}

Finding value(const Question& question, const std::vector<State>& states,
              const std::vector<Sale>& sales, const knowledge::Prices& prices) {
  Finding finding;
  finding.evidence = weigh_sales(question, sales, prices);
  for (const State& state : states) {
    finding.estimates.push_back(
        estimate_of(question, state, finding.evidence.counted, prices.rules));
  }
  if (finding.estimates.empty()) return finding;
  const Estimate& first = finding.estimates.front();
  finding.trial = tried(question, first, finding.evidence.counted, prices.rules);
  const bool outliers =
      std::any_of(finding.evidence.excluded.begin(), finding.evidence.excluded.end(),
                  [](const Exclusion& one) { return one.why == Excluded::outlier; });
  if (outliers && first.method != Method::none) {
    knowledge::Prices all = prices;
    all.rules.outlier = 1e9;
    const Evidence whole = weigh_sales(question, sales, all);
    finding.with_outliers = estimate_of(question, states.front(), whole.counted, all.rules).middle;
  }
  return finding;
}

}  // namespace winchbook::assess::value
