#include <cmath>

#include "answers/value.h"
#include "answers/value_words.h"
#include "json/json.h"
#include "record/enum_words.h"

namespace winchbook::answers {
namespace {

using assess::value::Comparable;
using assess::value::Estimate;
using assess::value::Exclusion;
using assess::value::Method;
using assess::value::Sale;
using json::Json;

using json::list;
using json::money;
using json::or_null;

double share(double value) {
  constexpr double kSteps = 1e4;
  return std::round(value * kSteps) / kSteps + 0.0;
}

Json sale_of(const Sale& sale) {
  return {{"line", sale.line > 0 ? Json(sale.line) : Json(nullptr)},
          {"date", json::date(sale.date)},
          {"price", money(sale.price)},
          {"basis", base::word_of(sale.basis)},
          {"source", sale.source}};
}

Json traits_of(const std::vector<assess::value::Trait>& traits) {
  return list(traits, [](assess::value::Trait trait) { return base::word_of(trait); });
}

Json estimate_of(const Estimate& estimate, const std::string& currency) {
  const bool any = estimate.method != Method::none;
  const auto price = [&](double amount, RoundPrice how) {
    return money(assess::value::rounded_price(amount, how), currency);
  };
  return {
      {"method", base::word_of(estimate.method)},
      {"range", any ? json::range(price(estimate.low, RoundPrice::down),
                                  price(estimate.high, RoundPrice::up))
                    : Json(nullptr)},
      {"middle", any ? price(estimate.middle, RoundPrice::near) : Json(nullptr)},
      {"columns", traits_of(estimate.columns)},
      {"condition_number", estimate.fit ? Json(share(estimate.fit->condition)) : Json(nullptr)},
      {"r_squared", estimate.fit ? Json(share(estimate.fit->r_squared)) : Json(nullptr)},
      {"notes", list(estimate.notes, [](assess::value::Note note) { return base::word_of(note); })},
      {"beyond", traits_of(estimate.beyond)},
      {"alike", traits_of(estimate.alike)},
      {"silent", traits_of(estimate.silent)},
      {"untold", traits_of(estimate.untold)}};
}

Json courses_of(const Valued& valued) {
  Json courses = Json::array();
  if (valued.courses.empty()) return courses;
  const assess::value::State& found = valued.states.front().state;
  for (const auto& one : valued.courses) {
    Json changed = Json::array();
    for (const auto trait : changes(found, one.state))
      changed.push_back(changed_words(trait, one.state));
    courses.push_back({{"course", record::word_of(one.course)},
                       {"from", base::word_of(one.from)},
                       {"changes", std::move(changed)},
                       {"estimate", estimate_of(assess::value::estimate_of(valued.finding, one),
                                                valued.question.currency)}});
  }
  return courses;
}

Json counted_of(const Valued& valued, std::size_t at) {
  const Comparable& one = valued.finding.evidence.counted[at];
  Json json = sale_of(one.sale);
  const std::string& currency = valued.question.currency;
  json["paid"] = money(one.paid, one.sale.price.currency);
  json["rate"] = one.rate;
  json["index"] = share(one.index);
  json["comparable"] = money(one.amount, currency);
  Json steps = Json::array();
  Json adjusted = nullptr;
  Json weight = nullptr;
  const auto& estimates = valued.finding.estimates;
  if (!estimates.empty() && at < estimates.front().grid.size()) {
    const auto& sale = estimates.front().grid[at];
    for (const auto& step : sale.steps) {
      steps.push_back({{"trait", base::word_of(step.trait)},
                       {"percent", share(step.percent)},
                       {"after", money(step.amount, currency)}});
    }
    adjusted = money(sale.amount, currency);
    weight = share(sale.weight);
  }
  json["steps"] = std::move(steps);
  json["adjusted"] = std::move(adjusted);
  json["weight"] = std::move(weight);
  return json;
}

}  // namespace

std::string value_as_json(const Valued& valued) {
  const auto& finding = valued.finding;
  Json found = nullptr;
  Json left = nullptr;
  for (std::size_t i = 0; i < finding.estimates.size(); ++i) {
    (valued.states[i].kind == assess::ValuedState::Kind::found ? found : left) =
        estimate_of(finding.estimates[i], valued.question.currency);
  }
  Json counted = Json::array();
  for (std::size_t i = 0; i < finding.evidence.counted.size(); ++i)
    counted.push_back(counted_of(valued, i));
  Json excluded = Json::array();
  for (const Exclusion& one : finding.evidence.excluded) {
    Json json = sale_of(one.sale);
    json["reason"] = base::word_of(one.why);
    excluded.push_back(std::move(json));
  }
  Json trial = nullptr;
  if (finding.trial) {
    trial = {{"sales", finding.trial->sales},
             {"median_error", share(finding.trial->median_error)},
             {"ninth_error", share(finding.trial->ninth_error)}};
  }
  const Json all{{"maker", valued.question.maker},
                 {"model", valued.question.model},
                 {"purpose", valued.question.purpose.name},
                 {"definition", valued.question.purpose.definition},
                 {"as_of", json::date(valued.question.as_of)},
                 {"currency", valued.question.currency},
                 {"found", std::move(found)},
                 {"left", std::move(left)},
                 {"courses", courses_of(valued)},
                 {"trial", std::move(trial)},
                 {"with_outliers", or_null(finding.with_outliers,
                                           [&](double amount) {
                                             return money(assess::value::rounded_price(
                                                              amount, RoundPrice::near),
                                                          valued.question.currency);
                                           })},
                 {"older", valued.older},
                 {"counted", std::move(counted)},
                 {"excluded", std::move(excluded)}};
  return json::answer("value", all);
}

}  // namespace winchbook::answers
