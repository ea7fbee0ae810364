#include <cmath>

#include "answers/seat.h"
#include "json/json.h"

namespace winchbook::answers {
namespace {

using assess::fitting::Candidate;
using assess::fitting::Gauge;
using assess::fitting::running_clearance;
using assess::fitting::SeatReason;
using assess::fitting::Span;
using json::Json;

/// Thousandths of a millimetre are beyond any caliper.
double rounded(double value) {
  return std::round(value * 1000) / 1000 + 0.0;
}

Json range(const Span& span) {
  return json::range(rounded(span.low), rounded(span.high));
}

Json range(const Gauge& gauge) {
  return range(Span{gauge.value - gauge.tolerance, gauge.value + gauge.tolerance});
}

template <class Value> Json range_or_null(const std::optional<Value>& value) {
  return json::or_null(value, [](const Value& of) { return range(of); });
}

Json of(const Candidate& candidate) {
  const auto& washer = candidate.washer;
  return {{"line", washer.line},
          {"donor", washer.donor},
          {"material", washer.material},
          {"outside", rounded(washer.outside)},
          {"inside", rounded(washer.inside)},
          {"thickness", rounded(washer.thickness)},
          {"held", base::word_of(washer.turns)},
          {"count", washer.count},
          {"price_as_written", json::or_null(washer.price)},
          {"fit", base::word_of(candidate.fit)},
          {"clearance_outside", range(candidate.outside_clearance)},
          {"clearance_inside", range(candidate.inside_clearance)},
          {"trim_outside", rounded(candidate.trim_outside)},
          {"open_inside", rounded(candidate.open_inside)},
          {"height_change", json::or_null(candidate.height_change, rounded)},
          {"reasons",
           json::list(candidate.reasons, [](SeatReason reason) { return base::word_of(reason); })}};
}

}  // namespace

std::string seat_as_json(const SeatAnswer& answer) {
  const auto& seat = answer.request.seat;
  Json stack = nullptr;
  if (answer.stack) {
    stack = {{"faces", answer.stack->faces},
             {"height", range_or_null(answer.stack->height)},
             {"proud", range_or_null(answer.stack->proud)},
             {"press", base::word_of(answer.stack->press)},
             {"missing_height", json::or_null(answer.stack->missing, rounded)}};
  }
  const Json all{{"seat",
                  {{"bore", range(seat.bore)},
                   {"sleeve", range(seat.sleeve)},
                   {"depth", range_or_null(seat.depth)},
                   {"running_clearance_outside",
                    rounded(running_clearance(*answer.knowledge, seat.bore.value))},
                   {"running_clearance_inside",
                    rounded(running_clearance(*answer.knowledge, seat.sleeve.value))}}},
                 {"stack", std::move(stack)},
                 {"candidates", json::list(answer.candidates, of)}};
  return json::answer("seat", all);
}

}  // namespace winchbook::answers
