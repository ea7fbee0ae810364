#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "assess/fitting/drag.h"
#include "base/enum_words.h"
#include "knowledge/drag.h"
#include "knowledge/stock.h"

namespace winchbook::assess::fitting {

/// A length in mm as calipers gave it, and how far it may be off either way.
struct Gauge {
  double value = 0;
  double tolerance = 0;
};

/// The seat of a drag stack, as measured. The post is fixed and ends inside the sleeve; the spacer
/// is loose, stands on the stack and carries the star's pressure.
struct Seat {
  Gauge bore;                    ///< of the recess in the gear: outside of the washers
  Gauge sleeve;                  ///< what the washers go round: their inside
  std::optional<Gauge> depth;    ///< of the recess, floor to rim
  std::optional<Gauge> flats;    ///< across the flats of the sleeve, for washers keyed to it
  std::optional<Gauge> post;     ///< height of the fixed post over the recess's floor
  std::optional<Gauge> spacer;   ///< height of the loose spacer
  std::optional<Gauge> housing;  ///< height of the housing's rim over the recess's floor
  std::optional<Gauge> sunk;  ///< how far the spacer stands below the housing's rim with the star
                              ///< off and the stack in; below zero when it stands proud
};

using knowledge::StackWasher;
using knowledge::StockWasher;

/// What a candidate would do in the seat.
enum class Fit {
  as_it_is,
  one_size_down,
  after_trimming,
  not_at_all,
};

[[nodiscard]] constexpr auto enum_words(Fit /*list*/) {
  return std::to_array<base::EnumWord<Fit>>({
      {Fit::as_it_is, "as-it-is"},
      {Fit::one_size_down, "one-size-down"},
      {Fit::after_trimming, "after-trimming"},
      {Fit::not_at_all, "not-at-all"},
  });
}

enum class SeatReason {
  turns_freely,      ///< clear outside and inside by the running clearance
  tight_outside,     ///< touches the recess, or is closer than the running clearance
  tight_inside,      ///< touches the sleeve, or is closer than the running clearance
  within_tolerance,  ///< clear as measured, but not beyond doubt of the measuring
  smaller_step,      ///< about one step of sizes smaller than the seat
  too_small,         ///< wanders in its seat
  hole_too_large,    ///< wanders on the sleeve
  too_much_to_trim,  ///< more than may come off, or too narrow a ring would be left
  hard_material,     ///< is not trimmed
  hazard,            ///< an asbestos-type material: not cut, not sanded, not brushed
  not_tested,        ///< may hold asbestos for all that an eye can tell: it is not trimmed
  unknown_material,  ///< the friction table does not know it
  needs_ears,        ///< a washer keyed to the gear is wanted
  needs_flats,       ///< a washer keyed to the sleeve is wanted
  must_be_free,      ///< a friction washer is wanted that nothing holds
  wrong_sort,        ///< a metal washer where a friction washer is wanted, or the other way round
  flats_do_not_match,
  too_thick,  ///< thicker than the recess is deep
  too_few,    ///< the stock has fewer than the stack needs
};

[[nodiscard]] constexpr auto enum_words(SeatReason /*list*/) {
  return std::to_array<base::EnumWord<SeatReason>>({
      {SeatReason::turns_freely, "turns-freely"},
      {SeatReason::tight_outside, "tight-outside"},
      {SeatReason::tight_inside, "tight-inside"},
      {SeatReason::within_tolerance, "within-tolerance"},
      {SeatReason::smaller_step, "smaller-step"},
      {SeatReason::too_small, "too-small"},
      {SeatReason::hole_too_large, "hole-too-large"},
      {SeatReason::too_much_to_trim, "too-much-to-trim"},
      {SeatReason::hard_material, "hard-material"},
      {SeatReason::hazard, "hazard"},
      {SeatReason::not_tested, "not-tested"},
      {SeatReason::unknown_material, "unknown-material"},
      {SeatReason::needs_ears, "needs-ears"},
      {SeatReason::needs_flats, "needs-flats"},
      {SeatReason::must_be_free, "must-be-free"},
      {SeatReason::wrong_sort, "wrong-sort"},
      {SeatReason::flats_do_not_match, "flats-do-not-match"},
      {SeatReason::too_thick, "too-thick"},
      {SeatReason::too_few, "too-few"},
  });
}

/// How one washer of the stock fits.
struct Candidate {
  StockWasher washer;
  Fit fit = Fit::not_at_all;
  Span outside_clearance;   ///< recess less washer, on the diameter, mm; below zero: tight
  Span inside_clearance;    ///< washer less sleeve
  double trim_outside = 0;  ///< to take off the outside, on the diameter, mm
  double open_inside = 0;   ///< to open the hole by
  std::vector<SeatReason> reasons;
  std::optional<double> height_change;  ///< of the whole stack, mm, when its thicknesses are known
};

/// True when this is among its reasons.
[[nodiscard]] bool has(const Candidate& candidate, SeatReason reason);

/// What is wanted of the stock.
struct Wanted {
  bool metal = false;               ///< a metal washer of the stack, not a friction washer
  Turns turns = Turns::freely;      ///< how it is held
  int count = 1;                    ///< how many
  std::optional<double> thickness;  ///< of each it replaces, mm
};

/// Whether the star still presses the stack.
enum class Press {
  presses,
  spacer_on_post,   ///< the stack is lower than the fixed post: the spacer bottoms there
  star_on_housing,  ///< the spacer has sunk below the housing's rim: the star rubs there
  doubtful,         ///< within the measuring, it may or may not
  not_determined,   ///< not measured
};

[[nodiscard]] constexpr auto enum_words(Press /*list*/) {
  return std::to_array<base::EnumWord<Press>>({
      {Press::presses, "presses"},
      {Press::spacer_on_post, "spacer-on-post"},
      {Press::star_on_housing, "star-on-housing"},
      {Press::doubtful, "doubtful"},
      {Press::not_determined, "not-determined"},
  });
}

struct StackFinding {
  int faces = 0;
  std::optional<Span> height;  ///< of all washers, mm
  std::optional<Span> proud;   ///< of the recess's rim; below zero: within it
  Press press = Press::not_determined;
  /// Millimetres of stack that are missing before the star presses; empty when none or not known.
  std::optional<double> missing;
};

/// The clearance on the diameter, in mm, below which a washer does not turn freely: the least
/// clearance of the loose running fit H9/d9 for the seat's size (ISO 286-1). It is asked for under
/// the doubt of the calipers: what is clear as measured may still have to be trimmed.
[[nodiscard]] double running_clearance(const knowledge::DragKnowledge& knowledge, double nominal);

/// Every washer of the stock, the best first: as it is, one size down, after trimming, those of
/// which there are too few, not at all; within each those that leave the least room; then the
/// stock's order. Outside clearance = recess
/// − washer, inside clearance = washer − sleeve, each ± the tolerances of both. `caliper` is the
/// tolerance of the stock's own figures.
[[nodiscard]] std::vector<Candidate> find_washers(const Seat& seat, const Wanted& wanted,
                                                  const std::vector<StockWasher>& stock,
                                                  double caliper,
                                                  const knowledge::DragKnowledge& knowledge);

/// The stack as it stands: its faces, its height, and whether the star presses it. It does while
/// stack > post and stack + spacer > housing, each by at least the margin of the knowledge.
[[nodiscard]] StackFinding judge_stack(const Seat& seat, const std::vector<StackWasher>& stack,
                                       double caliper, const knowledge::DragKnowledge& knowledge);

/// What keeps a seat from being judged, in a sentence; empty when nothing does.
[[nodiscard]] std::string fault_of(const Seat& seat);

}  // namespace winchbook::assess::fitting
