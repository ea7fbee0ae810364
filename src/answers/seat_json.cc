#include <cmath>
#include <nlohmann/json.hpp>

#include "answers/seat.h"

namespace winchbook::answers {
namespace {

using Json = nlohmann::ordered_json;
using assess::fitting::Candidate;
using assess::fitting::Fit;
using assess::fitting::Gauge;
using assess::fitting::Press;
using assess::fitting::running_clearance;
using assess::fitting::SeatReason;
using assess::fitting::Span;
using assess::fitting::Turns;

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

const char* word(Fit fit) {
  switch (fit) {
    case Fit::as_it_is:
      return "as-it-is";
    case Fit::one_size_down:
      return "one-size-down";
    case Fit::after_trimming:
      return "after-trimming";
    case Fit::not_at_all:
      break;
  }
  return "not-at-all";
}

const char* word(Turns turns) {
  switch (turns) {
    case Turns::with_gear:
      return "gear";
    case Turns::with_sleeve:
      return "sleeve";
    case Turns::freely:
      break;
  }
  return "free";
}

const char* word(Press press) {
  switch (press) {
    case Press::presses:
      return "presses";
    case Press::spacer_on_post:
      return "spacer-on-post";
    case Press::star_on_housing:
      return "star-on-housing";
    case Press::doubtful:
      return "doubtful";
    case Press::not_determined:
      break;
  }
  return "not-determined";
}

const char* word(SeatReason reason) {
  switch (reason) {
    case SeatReason::turns_freely:
      return "turns-freely";
    case SeatReason::tight_outside:
      return "tight-outside";
    case SeatReason::tight_inside:
      return "tight-inside";
    case SeatReason::within_tolerance:
      return "within-tolerance";
    case SeatReason::smaller_step:
      return "smaller-step";
    case SeatReason::too_small:
      return "too-small";
    case SeatReason::hole_too_large:
      return "hole-too-large";
    case SeatReason::too_much_to_trim:
      return "too-much-to-trim";
    case SeatReason::hard_material:
      return "hard-material";
    case SeatReason::hazard:
      return "hazard";
    case SeatReason::unknown_material:
      return "unknown-material";
    case SeatReason::needs_ears:
      return "needs-ears";
    case SeatReason::needs_flats:
      return "needs-flats";
    case SeatReason::must_be_free:
      return "must-be-free";
    case SeatReason::wrong_sort:
      return "wrong-sort";
    case SeatReason::flats_do_not_match:
      return "flats-do-not-match";
    case SeatReason::too_thick:
      return "too-thick";
    case SeatReason::too_few:
      break;
  }
  return "too-few";
}

Json of(const Candidate& candidate) {
  const auto& washer = candidate.washer;
  Json reasons = Json::array();
  for (const SeatReason reason : candidate.reasons)
    reasons.push_back(word(reason));
  return {{"line", washer.line},
          {"donor", washer.donor},
          {"material", washer.material},
          {"outside", rounded(washer.outside)},
          {"inside", rounded(washer.inside)},
          {"thickness", rounded(washer.thickness)},
          {"held", word(washer.turns)},
          {"count", washer.count},
          {"price", washer.price.empty() ? Json(nullptr) : Json(washer.price)},
          {"fit", word(candidate.fit)},
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
             {"press", word(answer.stack->press)},
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
        {"clearance_outside", rounded(running_clearance(answer.knowledge, seat.bore.value))},
        {"clearance_inside", rounded(running_clearance(answer.knowledge, seat.sleeve.value))}}},
      {"stack", std::move(stack)},
      {"candidates", std::move(candidates)}};
  return json.dump(2) + "\n";
}

}  // namespace winchbook::answers
