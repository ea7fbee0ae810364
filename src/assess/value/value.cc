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
constexpr std::size_t kMostTries = 200;  // each from all the others: the square of their number
constexpr std::size_t kTold = 9;         // of ten sales, for a trait to be fitted
constexpr std::size_t kOfSales = 10;

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

/// How many of the counted sales tell a trait.
std::size_t tellers(const std::vector<Comparable>& counted, Trait trait) {
  return static_cast<std::size_t>(
      std::count_if(counted.begin(), counted.end(),
                    [&](const Comparable& one) { return one.sale.state[trait].has_value(); }));
}

/// The least and most that the sales tell of a trait; empty when none tells it.
std::optional<std::pair<double, double>> ends(const std::vector<Comparable>& counted, Trait trait) {
  std::optional<std::pair<double, double>> ends;
  for (const Comparable& one : counted) {
    const auto& told = one.sale.state[trait];
    if (!told) continue;
    if (!ends) ends = {*told, *told};
    ends->first = std::min(ends->first, *told);
    ends->second = std::max(ends->second, *told);
  }
  return ends;
}

/// The middle and the ends of the adjusted sales, but for the one at `without`.
Estimate grid(const Question& question, const State& reel, const std::vector<Comparable>& counted,
              const PriceRules& rules, std::optional<std::size_t> without = std::nullopt) {
  Estimate estimate;
  estimate.method = Method::grid;
  std::vector<Weighted> weighted;
  std::vector<double> amounts;
  for (std::size_t i = 0; i < counted.size(); ++i) {
    if (without == i) continue;
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

/// Says where the reel lies beside the sales; how many steps beyond them at most.
double compare_with_sales(const State& reel, const std::vector<Comparable>& counted,
                          Estimate& estimate) {
  double furthest = 0;
  for (int i = 0; i < kTraits; ++i) {
    const auto trait = static_cast<Trait>(i);
    if (!reel[trait]) {
      note(estimate, Note::not_told);
      continue;
    }
    const auto told = ends(counted, trait);
    if (!told) {
      note(estimate, Note::silent_sales);
      estimate.silent.push_back(trait);
      continue;
    }
    const double away = std::max(told->first - *reel[trait], *reel[trait] - told->second);
    if (away <= 0) continue;
    const bool alike = told->first == told->second;
    note(estimate, alike ? Note::alike : Note::beyond);
    (alike ? estimate.alike : estimate.beyond).push_back(trait);
    furthest = std::max(furthest, away);
  }
  return furthest;
}

/// What prices are fitted on, and the sales that tell all of it.
struct FitPlan {
  std::vector<Trait> traits;
  std::vector<const Comparable*> rows;
  std::vector<Note> notes;
  bool alike = false;  ///< the sales cannot tell a trait in which the reel differs from them
};

FitPlan plan_fit(const State& reel, const std::vector<Comparable>& counted) {
  FitPlan plan;
  for (int i = 0; i < kTraits; ++i) {
    const auto trait = static_cast<Trait>(i);
    const std::size_t told = tellers(counted, trait);
    if (told == 0) continue;
    if (told * kOfSales < counted.size() * kTold) {
      plan.notes.push_back(Note::seldom_told);
      continue;
    }
    const auto range = ends(counted, trait);
    if (range->second > range->first) plan.traits.push_back(trait);
    plan.alike = plan.alike ||
                 (range->second == range->first && reel[trait] && *reel[trait] != range->first);
  }
  for (const Comparable& one : counted) {
    const bool whole = std::all_of(plan.traits.begin(), plan.traits.end(),
                                   [&](Trait trait) { return one.sale.state[trait].has_value(); });
    if (whole) plan.rows.push_back(&one);
  }
  if (plan.rows.size() < counted.size()) plan.notes.push_back(Note::partly_told);
  return plan;
}

/// The log price fitted on the traits; empty with a note when that cannot be done.
std::optional<Estimate> regression(const State& reel, const std::vector<Comparable>& counted,
                                   const PriceRules& rules, std::vector<Note>& notes) {
  const FitPlan plan = plan_fit(reel, counted);
  const auto needed = static_cast<std::size_t>(
      std::max(rules.regression, rules.per_column * (static_cast<int>(plan.traits.size()) + 1)));
  if (plan.rows.size() < needed) {
    notes.push_back(Note::too_few_to_fit);
    return std::nullopt;
  }
  if (plan.alike) return std::nullopt;  // the grid's own steps are then all there is to go by
  std::vector<std::vector<double>> columns;
  std::vector<double> row;
  for (const Trait trait : plan.traits) {
    if (!reel[trait]) {
      notes.push_back(Note::not_told);
      return std::nullopt;
    }
    columns.emplace_back();
    for (const Comparable* one : plan.rows)
      columns.back().push_back(*one->sale.state[trait]);
    row.push_back(*reel[trait]);
  }
  std::vector<double> logs;
  for (const Comparable* one : plan.rows)
    logs.push_back(std::log(one->amount));
  const auto fitted = fit(columns, logs);
  const Fit* good = std::get_if<Fit>(&fitted);
  if (good == nullptr || good->condition > rules.condition) {
    notes.push_back(Note::collinear);
    return std::nullopt;
  }
  Estimate estimate;
  const Prediction prediction = predict(*good, row);
  const double reach = student_t(good->degrees, (100 - rules.interval) / 200.0) * prediction.sd;
  estimate.method = Method::regression;
  estimate.low = std::exp(prediction.mean - reach);
  estimate.middle = std::exp(prediction.mean);
  estimate.high = std::exp(prediction.mean + reach);
  estimate.fit = *good;
  estimate.columns = plan.traits;
  notes.insert(notes.end(), plan.notes.begin(), plan.notes.end());
  return estimate;
}

/// Takes the figure back; what was noted stays.
void refuse(Estimate& estimate, Note why) {
  estimate.method = Method::none;
  estimate.low = estimate.middle = estimate.high = 0;
  estimate.grid.clear();
  estimate.fit.reset();
  estimate.columns.clear();
  note(estimate, why);
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
  const double furthest = compare_with_sales(reel, counted, estimate);
  for (const Comparable& one : counted) {
    if (!one.indexed) note(estimate, Note::no_index);
    if (one.estimated_index) note(estimate, Note::estimated_index);
  }
  if (furthest > rules.reach) {
    refuse(estimate, Note::far_beyond);
  } else if (estimate.high > estimate.low * rules.spread) {
    refuse(estimate, Note::apart);
  }
  return estimate;
}

/// A state that nobody has seen: told only where the sales tell what sets it apart from `seen`.
Estimate expected_of(const Question& question, const State& seen, const State& state,
                     const std::vector<Comparable>& counted, const PriceRules& rules) {
  Estimate estimate = estimate_of(question, state, counted, rules);
  if (estimate.method == Method::none) return estimate;
  for (int i = 0; i < kTraits; ++i) {
    const auto trait = static_cast<Trait>(i);
    if (seen[trait] == state[trait]) continue;
    const bool told = estimate.method == Method::regression
                          ? std::find(estimate.columns.begin(), estimate.columns.end(), trait) !=
                                estimate.columns.end()
                          : tellers(counted, trait) > 0;
    if (!told) estimate.untold.push_back(trait);
  }
  if (!estimate.untold.empty()) refuse(estimate, Note::change_not_told);
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
    const std::size_t tries = std::min(counted.size(), kMostTries);
    for (std::size_t i = 0; i < tries; ++i) {
      const std::size_t at = i * counted.size() / tries;
      const double told = grid(question, counted[at].sale.state, counted, rules, at).middle;
      errors.push_back(std::abs(told / counted[at].amount - 1));
    }
  }
  if (errors.empty()) return std::nullopt;
  return Trial{static_cast<int>(errors.size()), quantile(errors, 0.5), quantile(errors, 0.9)};
}

/// The first with a figure; with none the first.
const Estimate& told_first(const std::vector<Estimate>& estimates) {
  const auto told = std::find_if(estimates.begin(), estimates.end(),
                                 [](const Estimate& one) { return one.method != Method::none; });
  return told == estimates.end() ? estimates.front() : *told;
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
              const std::vector<Sale>& sales, const knowledge::Prices& prices,
              const std::vector<State>& expected) {
  Finding finding;
  finding.evidence = weigh_sales(question, sales, prices);
  for (const State& state : states) {
    finding.estimates.push_back(
        estimate_of(question, state, finding.evidence.counted, prices.rules));
  }
  if (finding.estimates.empty()) return finding;
  for (const State& state : expected) {
    finding.expected.push_back(
        expected_of(question, states.front(), state, finding.evidence.counted, prices.rules));
  }
  const Estimate& first = told_first(finding.estimates);
  finding.trial = tried(question, first, finding.evidence.counted, prices.rules);
  const bool outliers =
      std::any_of(finding.evidence.excluded.begin(), finding.evidence.excluded.end(),
                  [](const Exclusion& one) { return one.why == Excluded::outlier; });
  if (outliers && finding.estimates.front().method != Method::none) {
    knowledge::Prices all = prices;
    constexpr double kAny = 1e9;
    all.rules.outlier = all.rules.reach = all.rules.spread = kAny;
    const Evidence whole = weigh_sales(question, sales, all);
    finding.with_outliers = estimate_of(question, states.front(), whole.counted, all.rules).middle;
  }
  return finding;
}

}  // namespace winchbook::assess::value
