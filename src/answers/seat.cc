#include "answers/seat.h"

#include <algorithm>
#include <utility>

namespace winchbook::answers {
namespace {

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

}  // namespace

base::Result<SeatAnswer> find_seat(const library::World& world, SeatRequest request) {
  if (const std::string fault = fault_of(request.seat); !fault.empty()) {
    return base::of_command(base::error(fault, "measure again, and give each figure its own option",
                                        "command-measure"));
  }
  auto knowledge = knowledge::load_drag(world.files, world.data);
  if (!knowledge) return knowledge.faults();
  SeatAnswer answer{std::move(request), std::move(knowledge).value(), {}, {}};
  if (!answer.request.stack.empty()) {
    const auto stack = read_stack(world, answer.request.stack);
    if (!stack) return stack.faults();
    answer.stack =
        judge_stack(answer.request.seat, *stack, answer.request.caliper, answer.knowledge);
    ask_for_friction_washers(*stack, answer.knowledge, answer.request.wanted);
  } else if (answer.request.seat.sunk) {
    answer.stack = judge_stack(answer.request.seat, {}, answer.request.caliper, answer.knowledge);
  }
  answer.request.wanted.count = std::max(answer.request.wanted.count, 1);
  if (answer.request.stock.empty()) return answer;
  const auto stock = read_stock(world, answer.request.stock);
  if (!stock) return stock.faults();
  const auto wanted = of_material(*stock, answer.request.material, answer.knowledge);
  answer.of_other_materials = stock->size() - wanted.size();
  answer.candidates = find_washers(answer.request.seat, answer.request.wanted, wanted,
                                   answer.request.caliper, answer.knowledge);
  return answer;
}

}  // namespace winchbook::answers
