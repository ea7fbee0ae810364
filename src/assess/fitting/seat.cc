#include "assess/fitting/seat.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace winchbook::assess::fitting {
namespace {

using knowledge::DragKnowledge;
using knowledge::WasherSort;

constexpr double kThousandth = 0.001;  // mm in a micrometre
constexpr double kKnife = 0.1;         // mm: finer than this nobody trims a washer
constexpr double kNothing = 1e-9;      // below any caliper's last figure

Span room(const Gauge& outer, const Gauge& inner) {
  const double middle = outer.value - inner.value;
  const double doubt = outer.tolerance + inner.tolerance;
  return {middle - doubt, middle + doubt};
}

double middle(const Span& span) {
  return (span.low + span.high) / 2;
}

/// The least amount, in steps a knife can keep to, that brings the low end up to `wanted`.
double to_take_off(const Span& clearance, double wanted) {
  const double lacking = wanted - clearance.low;
  if (lacking <= kNothing) return 0;
  return std::ceil(lacking / kKnife - kNothing) * kKnife;
}

/// Friction material of which nothing says that it holds no asbestos.
bool is_doubtful(const StockWasher& washer, const DragKnowledge& knowledge) {
  const knowledge::Friction* row = find_friction(knowledge, washer.material);
  const bool friction = row != nullptr && row->sort != WasherSort::metal;
  return friction && row->sort != WasherSort::hazard && !washer.is_cleared();
}

/// Looks at one washer of the stock in one seat.
class Trial {
 public:
  Trial(const Seat& seat, const Wanted& wanted, StockWasher washer, double caliper,
        const DragKnowledge& knowledge)
      : seat_(seat), wanted_(wanted), caliper_(caliper), knowledge_(knowledge) {
    candidate_.washer = std::move(washer);
  }

  Candidate judged() && {
    candidate_.outside_clearance = room(seat_.bore, measured(candidate_.washer.outside));
    candidate_.inside_clearance = room(measured(candidate_.washer.inside), seat_.sleeve);
    if (wanted_.thickness) {
      candidate_.height_change = (candidate_.washer.thickness - *wanted_.thickness) * wanted_.count;
    }
    const bool may_go_in = is_of_the_right_sort();
    const bool goes_in = fits_across();
    if (!may_go_in || !goes_in) candidate_.fit = Fit::not_at_all;
    if (is_doubtful(candidate_.washer, knowledge_)) tell(SeatReason::not_tested);
    if (candidate_.washer.count < wanted_.count) tell(SeatReason::too_few);
    return std::move(candidate_);
  }

 private:
  Gauge measured(double value) const { return {value, caliper_}; }
  void tell(SeatReason reason) { candidate_.reasons.push_back(reason); }

  bool refuse(SeatReason reason) {
    tell(reason);
    return false;
  }

  /// Material and keying: what no file can put right.
  bool is_of_the_right_sort() {
    const StockWasher& washer = candidate_.washer;
    const knowledge::Friction* row = find_friction(knowledge_, washer.material);
    if (row == nullptr) return refuse(SeatReason::unknown_material);
    if (row->sort == WasherSort::hazard) return refuse(SeatReason::hazard);
    bool right = true;
    if (wanted_.turns != washer.turns) {
      right = refuse(wanted_.turns == Turns::with_gear     ? SeatReason::needs_ears
                     : wanted_.turns == Turns::with_sleeve ? SeatReason::needs_flats
                                                           : SeatReason::must_be_free);
    }
    if (wanted_.metal != (row->sort == WasherSort::metal) && right) {
      right = refuse(SeatReason::wrong_sort);
    }
    if (right && washer.turns == Turns::with_sleeve && seat_.flats && washer.flats) {
      const double play = *washer.flats - seat_.flats->value;
      if (play < 0 || play > knowledge_.seat.flats_play) {
        right = refuse(SeatReason::flats_do_not_match);
      }
    }
    if (seat_.depth && washer.thickness > seat_.depth->value + seat_.depth->tolerance) {
      right = refuse(SeatReason::too_thick);
    }
    return right;
  }

  /// Outside in the recess, inside on the sleeve. A washer keyed to the sleeve sits on its flats,
  /// one keyed to the gear in its slots: there the other diameter alone must be clear.
  bool fits_across() {
    const double outside = running_clearance(knowledge_, seat_.bore.value);
    const double inside = running_clearance(knowledge_, seat_.sleeve.value);
    candidate_.trim_outside = to_take_off(candidate_.outside_clearance, outside);
    if (candidate_.washer.turns != Turns::with_sleeve) {
      candidate_.open_inside = to_take_off(candidate_.inside_clearance, inside);
    }
    if (candidate_.trim_outside > 0 || candidate_.open_inside > 0) return fits_after_trimming();
    return fits_untouched();
  }

  bool fits_after_trimming() {
    const auto why = [&](const Span& clearance, SeatReason tight) {
      tell(middle(clearance) > kNothing ? SeatReason::within_tolerance : tight);
    };
    if (candidate_.trim_outside > 0) why(candidate_.outside_clearance, SeatReason::tight_outside);
    if (candidate_.open_inside > 0) why(candidate_.inside_clearance, SeatReason::tight_inside);
    const knowledge::Friction* row = find_friction(knowledge_, candidate_.washer.material);
    if (row == nullptr || row->sort == WasherSort::hazard) return false;
    if (row->sort != WasherSort::soft) return refuse(SeatReason::hard_material);
    if (!candidate_.washer.is_cleared()) return false;
    const double ring = (candidate_.washer.outside - candidate_.trim_outside -
                         candidate_.washer.inside - candidate_.open_inside) /
                        2;
    if (std::max(candidate_.trim_outside, candidate_.open_inside) >
            knowledge_.seat.most_trim + kNothing ||
        ring < knowledge_.seat.least_ring - kNothing) {
      return refuse(SeatReason::too_much_to_trim);
    }
    if (wanders()) return false;
    candidate_.fit = Fit::after_trimming;
    return true;
  }

  /// So much smaller than its seat, or with so large a hole, that nothing keeps it in its middle.
  bool wanders() {
    const double most = knowledge_.seat.same_size + knowledge_.seat.one_step + kNothing;
    if (candidate_.washer.turns != Turns::with_gear &&
        middle(candidate_.outside_clearance) > most) {
      return !refuse(SeatReason::too_small);
    }
    if (candidate_.washer.turns == Turns::freely && middle(candidate_.inside_clearance) > most) {
      return !refuse(SeatReason::hole_too_large);
    }
    return false;
  }

  bool fits_untouched() {
    if (wanders()) return false;
    tell(SeatReason::turns_freely);
    candidate_.fit = middle(candidate_.outside_clearance) > knowledge_.seat.same_size + kNothing
                         ? Fit::one_size_down
                         : Fit::as_it_is;
    if (candidate_.fit == Fit::one_size_down) tell(SeatReason::smaller_step);
    return true;
  }

  const Seat& seat_;
  const Wanted& wanted_;
  double caliper_;
  const DragKnowledge& knowledge_;
  Candidate candidate_;
};

Span sum(const Span& a, const Span& b) {
  return {a.low + b.low, a.high + b.high};
}

Span spread(const Gauge& gauge) {
  return {gauge.value - gauge.tolerance, gauge.value + gauge.tolerance};
}

Span less(const Span& a, const Span& b) {
  return {a.low - b.high, a.high - b.low};
}

/// Whether the star presses, given by how much each of its two conditions is met.
void judge_press(const std::optional<Span>& over_post, const std::optional<Span>& over_housing,
                 double margin, StackFinding& finding) {
  const auto lacks = [&](const std::optional<Span>& room_left) {
    return room_left ? std::max(0.0, margin - room_left->low) : 0.0;
  };
  const double missing = std::max(lacks(over_post), lacks(over_housing));
  if (missing > kNothing) finding.missing = missing;
  if (over_post && over_post->high <= kNothing) {
    finding.press = Press::spacer_on_post;
  } else if (over_housing && over_housing->high <= kNothing) {
    finding.press = Press::star_on_housing;
  } else if (missing > kNothing) {
    finding.press = Press::doubtful;
  } else if (over_housing) {
    finding.press = Press::presses;
  }
}

}  // namespace

bool has(const Candidate& candidate, SeatReason reason) {
  return std::find(candidate.reasons.begin(), candidate.reasons.end(), reason) !=
         candidate.reasons.end();
}

double running_clearance(const DragKnowledge& knowledge, double nominal) {
  const knowledge::FitLimit* hole = find_limit(knowledge, "H9", nominal);
  const knowledge::FitLimit* washer = find_limit(knowledge, "d9", nominal);
  if (hole != nullptr && washer != nullptr) return (hole->lower - washer->upper) * kThousandth;
  // Over the table a seat is no reel's; the widest band's figure is still the nearest.
  int widest = 0;
  for (const knowledge::FitLimit& limit : knowledge.fits) {
    if (limit.zone == "d9") widest = std::max(widest, -limit.upper);
  }
  return widest * kThousandth;
}

std::vector<Candidate> find_washers(const Seat& seat, const Wanted& wanted,
                                    const std::vector<StockWasher>& stock, double caliper,
                                    const DragKnowledge& knowledge) {
  std::vector<Candidate> candidates;
  candidates.reserve(stock.size());
  for (const StockWasher& washer : stock) {
    candidates.push_back(Trial(seat, wanted, washer, caliper, knowledge).judged());
  }
  const auto rank = [](const Candidate& one) {
    const bool usable = one.fit != Fit::not_at_all;
    return std::tuple(!usable, usable && has(one, SeatReason::not_tested),
                      usable && has(one, SeatReason::too_few), one.fit,
                      one.fit == Fit::after_trimming ? one.trim_outside + one.open_inside
                                                     : std::abs(middle(one.outside_clearance)));
  };
  std::stable_sort(candidates.begin(), candidates.end(),
                   [&](const Candidate& a, const Candidate& b) { return rank(a) < rank(b); });
  return candidates;
}

StackFinding judge_stack(const Seat& seat, const std::vector<StackWasher>& stack, double caliper,
                         const DragKnowledge& knowledge) {
  StackFinding finding;
  std::vector<Turns> turns;
  Span height;
  bool measured = !stack.empty();
  for (const StackWasher& washer : stack) {
    turns.push_back(washer.turns);
    measured = measured && washer.thickness > 0;
    height = sum(height, spread({washer.thickness, caliper}));
  }
  finding.faces = rubbing_faces(turns);
  if (measured) finding.height = height;
  if (measured && seat.depth) finding.proud = less(height, spread(*seat.depth));

  std::optional<Span> over_post;
  std::optional<Span> over_housing;
  if (measured && seat.post) over_post = less(height, spread(*seat.post));
  if (measured && seat.spacer && seat.housing) {
    over_housing = less(sum(height, spread(*seat.spacer)), spread(*seat.housing));
  }
  if (seat.sunk) {
    const Span sunk = spread(*seat.sunk);
    over_housing = Span{-sunk.high, -sunk.low};  // seen with the eye: it outweighs the sum
  }
  judge_press(over_post, over_housing, knowledge.seat.press_margin, finding);
  return finding;
}

std::string fault_of(const Seat& seat) {
  if (seat.bore.value <= 0 || seat.sleeve.value <= 0) return "a diameter is not above zero";
  if (seat.sleeve.value >= seat.bore.value) {
    return "the sleeve is not smaller than the bore of the recess";
  }
  for (const auto& gauge : {seat.depth, seat.flats, seat.post, seat.spacer, seat.housing}) {
    if (gauge && gauge->value <= 0) return "a height or depth is not above zero";
  }
  return {};
}

}  // namespace winchbook::assess::fitting
