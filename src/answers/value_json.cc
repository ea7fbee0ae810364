#include <fmt/format.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "answers/value.h"
#include "answers/value_words.h"
#include "record/enum_words.h"

namespace winchbook::answers {
namespace {

using Json = nlohmann::ordered_json;
using assess::value::Comparable;
using assess::value::Estimate;
using assess::value::Exclusion;
using assess::value::Method;
using assess::value::Sale;

Json money(double amount) {
  return fmt::format("{:.2f}", amount);
}

double share(double value) {
  constexpr double kSteps = 1e4;
  return std::round(value * kSteps) / kSteps + 0.0;
}

Json sale_of(const Sale& sale) {
  return {{"line", sale.line > 0 ? Json(sale.line) : Json(nullptr)},
          {"date", sale.date.text()},
          {"price", sale.price.amount.text()},
          {"currency", sale.price.currency},
          {"basis", base::word_of(sale.basis)},
          {"source", sale.source}};
}

Json notes_of(const Estimate& estimate) {
  Json notes = Json::array();
  for (const auto note : estimate.notes)
    notes.push_back(base::word_of(note));
  return notes;
}

Json traits_of(const std::vector<assess::value::Trait>& traits) {
  Json words = Json::array();
  for (const auto trait : traits)
    words.push_back(base::word_of(trait));
  return words;
}

Json estimate_of(const Estimate& estimate) {
  const bool any = estimate.method != Method::none;
  return {{"method", base::word_of(estimate.method)},
          {"range", any ? Json::array({price_text(estimate.low, RoundPrice::down),
                                       price_text(estimate.high, RoundPrice::up)})
                        : Json(nullptr)},
          {"middle", any ? Json(price_text(estimate.middle, RoundPrice::near)) : Json(nullptr)},
          {"columns", traits_of(estimate.columns)},
          {"condition", estimate.fit ? Json(share(estimate.fit->condition)) : Json(nullptr)},
          {"r_squared", estimate.fit ? Json(share(estimate.fit->r_squared)) : Json(nullptr)},
          {"notes", notes_of(estimate)},
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
                       {"estimate", estimate_of(assess::value::estimate_of(valued.finding, one))}});
  }
  return courses;
}

Json counted_of(const Valued& valued, std::size_t at) {
  const Comparable& one = valued.finding.evidence.counted[at];
  Json json = sale_of(one.sale);
  json["paid"] = money(one.paid);
  json["rate"] = one.rate;
  json["index"] = share(one.index);
  json["amount"] = money(one.amount);
  Json steps = Json::array();
  Json adjusted = nullptr;
  Json weight = nullptr;
  const auto& estimates = valued.finding.estimates;
  if (!estimates.empty() && at < estimates.front().grid.size()) {
    const auto& sale = estimates.front().grid[at];
    for (const auto& step : sale.steps) {
      steps.push_back({{"trait", base::word_of(step.trait)},
                       {"percent", share(step.percent)},
                       {"amount", money(step.amount)}});
    }
    adjusted = money(sale.amount);
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
        estimate_of(finding.estimates[i]);
  }
  Json counted = Json::array();
  for (std::size_t i = 0; i < finding.evidence.counted.size(); ++i)
    counted.push_back(counted_of(valued, i));
  Json excluded = Json::array();
  for (const Exclusion& one : finding.evidence.excluded) {
    Json json = sale_of(one.sale);
    json["because"] = base::word_of(one.why);
    excluded.push_back(std::move(json));
  }
  Json trial = nullptr;
  if (finding.trial) {
    trial = {{"sales", finding.trial->sales},
             {"median_error", share(finding.trial->median_error)},
             {"ninth_error", share(finding.trial->ninth_error)}};
  }
  const Json json{{"maker", valued.question.maker},
                  {"model", valued.question.model},
                  {"purpose", valued.question.purpose.name},
                  {"basis", valued.question.purpose.definition},
                  {"as_of", base::iso_text(valued.question.as_of)},
                  {"currency", valued.question.currency},
                  {"found", std::move(found)},
                  {"left", std::move(left)},
                  {"courses", courses_of(valued)},
                  {"trial", std::move(trial)},
                  {"with_outliers", finding.with_outliers
                                        ? Json(price_text(*finding.with_outliers, RoundPrice::near))
                                        : Json(nullptr)},
                  {"older", valued.older},
                  {"counted", std::move(counted)},
                  {"excluded", std::move(excluded)}};
  return json.dump(2) + "\n";
}

}  // namespace winchbook::answers
