#include <cmath>
#include <nlohmann/json.hpp>

#include "answers/seat.h"

namespace winchbook::answers {
namespace {

using Json = nlohmann::ordered_json;
using assess::fitting::Candidate;
using assess::fitting::Gauge;
using assess::fitting::running_clearance;
using assess::fitting::SeatReason;
using assess::fitting::Span;

/// Thousandths of a millimetre are beyond any caliper.
double rounded(double value) {
  return std::round(value * 1000) / 1000 + 0.0;
}

Json range(const Span& span) {
  return Json::array({rounded(span.low), rounded(span.high)});
}

Json range(const Gauge& gauge) {
  return range(Span{gauge.value - gauge.tolerance, gauge.value + gauge.tolerance});
}

template <class Value> Json or_null(const std::optional<Value>& value) {
  return value ? range(*value) : Json(nullptr);
}

Json or_null(const std::optional<double>& value) {
  return value ? Json(rounded(*value)) : Json(nullptr);
}

Json of(const Candidate& candidate) {
  const auto& washer = candidate.washer;
  Json reasons = Json::array();
  for (const SeatReason reason : candidate.reasons)
    reasons.push_back(base::word_of(reason));
  return {{"line", washer.line},
          {"donor", washer.donor},
          {"material", washer.material},
          {"outside", rounded(washer.outside)},
          {"inside", rounded(washer.inside)},
          {"thickness", rounded(washer.thickness)},
          {"held", base::word_of(washer.turns)},
          {"count", washer.count},
          {"price", washer.price.empty() ? Json(nullptr) : Json(washer.price)},
          {"fit", base::word_of(candidate.fit)},
          {"outside_clearance", range(candidate.outside_clearance)},
          {"inside_clearance", range(candidate.inside_clearance)},
          {"trim_outside", rounded(candidate.trim_outside)},
          {"open_inside", rounded(candidate.open_inside)},
          {"height_change", or_null(candidate.height_change)},
          {"reasons", std::move(reasons)}};
}

}  // namespace

std::string seat_as_json(const SeatAnswer& answer) {
  const auto& seat = answer.request.seat;
  Json stack = nullptr;
  if (answer.stack) {
    stack = {{"faces", answer.stack->faces},
             {"height", or_null(answer.stack->height)},
             {"proud", or_null(answer.stack->proud)},
             {"press", base::word_of(answer.stack->press)},
             {"missing", or_null(answer.stack->missing)}};
  }
  Json candidates = Json::array();
  for (const Candidate& candidate : answer.candidates)
    candidates.push_back(of(candidate));
  const Json json{
      {"seat",
       {{"bore", range(seat.bore)},
        {"sleeve", range(seat.sleeve)},
        {"depth", or_null(seat.depth)},
        {"clearance_outside", rounded(running_clearance(*answer.knowledge, seat.bore.value))},
        {"clearance_inside", rounded(running_clearance(*answer.knowledge, seat.sleeve.value))}}},
      {"stack", std::move(stack)},
      {"candidates", std::move(candidates)}};
  return json.dump(2) + "\n";
}

}  // namespace winchbook::answers
