#include "answers/seat.h"

#include <algorithm>
#include <utility>

namespace winchbook::answers {
namespace {

using assess::fitting::Gauge;
using assess::fitting::StackWasher;
using assess::fitting::StockWasher;
using assess::fitting::Turns;
using knowledge::WasherSort;

/// Friction washers of a stack are those whose material is no metal.
bool is_friction(const StackWasher& washer, const knowledge::DragKnowledge& knowledge) {
  const knowledge::Friction* row = find_friction(knowledge, washer.material);
  return row == nullptr ? washer.turns == Turns::freely : row->sort != WasherSort::metal;
}

/// What the stack's friction washers ask of the stock, where nobody has said it.
void ask_for_friction_washers(const std::vector<StackWasher>& stack,
                              const knowledge::DragKnowledge& knowledge,
                              assess::fitting::Wanted& wanted) {
  int count = 0;
  for (const StackWasher& washer : stack) {
    if (!is_friction(washer, knowledge)) continue;
    ++count;
    if (!wanted.thickness && washer.thickness > 0) wanted.thickness = washer.thickness;
  }
  if (wanted.count == 0) wanted.count = std::max(count, 1);
}

/// Those of a material, by any of its names; all of them when none is asked for.
std::vector<StockWasher> of_material(const std::vector<StockWasher>& stock,
                                     const std::string& material,
                                     const knowledge::DragKnowledge& knowledge) {
  if (material.empty()) return stock;
  const knowledge::Friction* row = find_friction(knowledge, material);
  std::vector<StockWasher> found;
  for (const StockWasher& washer : stock) {
    const bool same = row == nullptr ? washer.material == material
                                     : find_friction(knowledge, washer.material) == row;
    if (same) found.push_back(washer);
  }
  return found;
}

SeatRequest request_of(const SeatTyped& typed) {
  SeatRequest request;
  const double tolerance = typed.tolerance.measure.value;
  const auto gauge = [&](const base::Measure& measure) {
    return Gauge{measure.value, measure.tolerance > 0 ? measure.tolerance : tolerance};
  };
  const auto maybe = [&](const auto& measured) {
    return measured ? std::optional(gauge(measured->measure)) : std::nullopt;
  };
  request.caliper = tolerance;
  request.seat.bore = gauge(typed.bore->measure);
  request.seat.sleeve = gauge(typed.sleeve->measure);
  request.seat.depth = maybe(typed.depth);
  request.seat.flats = maybe(typed.flats);
  request.seat.post = maybe(typed.post);
  request.seat.spacer = maybe(typed.spacer);
  request.seat.housing = maybe(typed.housing);
  request.seat.sunk = maybe(typed.sunk);
  request.stack = typed.stack;
  request.stock = typed.stock;
  request.material = typed.material;
  request.wanted.metal = typed.metal;
  request.wanted.turns = typed.held;
  request.wanted.count = typed.count.value_or(0);
  if (typed.thickness) request.wanted.thickness = typed.thickness->measure.value;
  return request;
}

}  // namespace

forms::Form seat_form(SeatTyped& typed) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      field("--bore", "across the recess in the gear: \"22 mm\", \"7/8 in\"", typed.bore),
      field("--sleeve", "across the sleeve that the washers go round", typed.sleeve),
      field("--depth", "of the recess, from its floor to its rim", typed.depth),
      field("--flats", "across the flats of the sleeve", typed.flats),
      field("--post", "height of the fixed post over the recess's floor", typed.post),
      field("--spacer", "height of the loose spacer that the star presses", typed.spacer),
      field("--housing", "height of the housing's rim over the recess's floor", typed.housing),
      field("--sunk", "with the star off: how far the spacer stands below the rim of the housing",
            typed.sunk),
      field("--tolerance",
            "how far a figure of the calipers may be off either way; left out, 0.1 mm",
            typed.tolerance),
      field("--stack",
            "the washers from the gear's floor outwards, or a CSV file of them: \"red fibre free "
            "1.3 mm, steel gear 0.9 mm\"",
            typed.stack),
      field("--stock", "your stock of washers: CSV or XML", typed.stock),
      field("--held", "what holds the wanted washer: free, gear or sleeve", typed.held),
      flag("--metal", "a metal washer is wanted, not a friction washer", typed.metal),
      field("--count", "how many are wanted; left out, the stack's friction washers", typed.count),
      field("--thickness", "of each washer it replaces; left out, the stack's", typed.thickness),
      field("--material", "look at washers of this material alone", typed.material),
      flag("--json", "the answer as JSON (schemas/seat.schema.json)", typed.json),
  };
}

base::Result<SeatAnswer> find_seat(library::Library& library, const SeatTyped& typed) {
  auto missing = missing_among({{"--bore", typed.bore}, {"--sleeve", typed.sleeve}});
  if (!missing.empty()) return missing;
  SeatAnswer answer;
  answer.request = request_of(typed);
  SeatRequest& request = answer.request;
  if (const std::string fault = fault_of(request.seat); !fault.empty()) {
    return base::of_command(base::error(fault, "measure again, and give each figure its own option",
                                        "command-measure"));
  }
  const auto loaded = library.drag();
  if (!loaded) return loaded.faults();
  const knowledge::DragKnowledge& knowledge = **loaded;
  answer.knowledge = &knowledge;
  if (!request.stack.empty()) {
    const auto stack = knowledge::read_stack(library.source(), request.stack);
    if (!stack) return stack.faults();
    answer.stack = judge_stack(request.seat, *stack, request.caliper, knowledge);
    ask_for_friction_washers(*stack, knowledge, request.wanted);
  } else if (request.seat.sunk) {
    answer.stack = judge_stack(request.seat, {}, request.caliper, knowledge);
  }
  request.wanted.count = std::max(request.wanted.count, 1);
  if (request.stock.empty()) return answer;
  const auto stock = knowledge::read_stock(library.source(), request.stock);
  if (!stock) return stock.faults();
  const auto wanted = of_material(*stock, request.material, knowledge);
  answer.of_other_materials = stock->size() - wanted.size();
  answer.candidates =
      find_washers(request.seat, request.wanted, wanted, request.caliper, knowledge);
  return answer;
}

}  // namespace winchbook::answers
