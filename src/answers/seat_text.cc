#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "answers/seat.h"

namespace winchbook::answers {
namespace {

using assess::fitting::Candidate;
using assess::fitting::Fit;
using assess::fitting::Gauge;
using assess::fitting::Press;
using assess::fitting::running_clearance;
using assess::fitting::SeatReason;
using assess::fitting::Span;
using assess::fitting::StackFinding;
using assess::fitting::Turns;

constexpr const char* kTrimming =
    "Cut with a sharp blade on a board, away from the hand; do not sand: the dust is not for the\n"
    "lungs. A grey, fibrous washer of unknown make may hold asbestos: until a laboratory has said\n"
    "no it is not cut, sanded or blown on. Local rules come first.\n";

std::string mm(double value) {
  return fmt::format("{:.4g} mm", value + 0.0);
}

std::string gauge(const Gauge& of) {
  return of.tolerance > 0 ? fmt::format("{:.4g} ± {:.4g} mm", of.value, of.tolerance)
                          : mm(of.value);
}

/// Hundredths of a millimetre, and no "-0.00".
double hundredths(double value) {
  return std::round(value * 100) / 100 + 0.0;
}

std::string room(const Span& span) {
  return fmt::format("{:.2f} to {:.2f} mm", hundredths(span.low), hundredths(span.high));
}

std::string washer(const Candidate& candidate) {
  const auto& of = candidate.washer;
  std::string text = fmt::format("  line {}: {}, {}: {:.4g} × {:.4g} × {:.4g} mm", of.line,
                                 of.donor, of.material, of.outside, of.inside, of.thickness);
  if (of.turns == Turns::with_gear) text += ", with ears";
  if (of.turns == Turns::with_sleeve) text += ", with flats";
  if (of.count != 1) text += fmt::format(", {} of them", of.count);
  if (!of.price.empty()) text += ", " + of.price;
  return text + "\n";
}

void say(std::string& text, const std::string& sentence) {
  text += "    " + sentence + "\n";
}

/// What must be cut, and from where.
void say_trimming(const Candidate& candidate, std::string& text) {
  const bool doubt = has(candidate, SeatReason::within_tolerance);
  if (candidate.trim_outside > 0) {
    say(text, fmt::format("{}: take {} off the outside, {:.2g} mm all round, to {}",
                          has(candidate, SeatReason::tight_outside) ? "Tight in the recess"
                          : doubt                                   ? "May bind in the recess"
                                                                    : "Close in the recess",
                          mm(candidate.trim_outside), candidate.trim_outside / 2,
                          mm(candidate.washer.outside - candidate.trim_outside)));
  }
  if (candidate.open_inside > 0) {
    say(text, fmt::format("{}: open the hole by {}, to {}",
                          has(candidate, SeatReason::tight_inside) ? "Tight on the sleeve"
                                                                   : "May bind on the sleeve",
                          mm(candidate.open_inside),
                          mm(candidate.washer.inside + candidate.open_inside)));
  }
}

std::string_view why_not(SeatReason reason) {
  switch (reason) {
    case SeatReason::too_small:
      return "More than a step too small: it wanders in its seat.";
    case SeatReason::hole_too_large:
      return "The hole is too large: it wanders on the sleeve.";
    case SeatReason::too_much_to_trim:
      return "Too much would have to come off, or too narrow a ring would be left.";
    case SeatReason::hard_material:
      return "Its material is not trimmed: take one size down.";
    case SeatReason::hazard:
      return "An asbestos-type material: not cut, sanded, brushed or blown on. Bag it, and follow "
             "the local rules.";
    case SeatReason::unknown_material:
      return "Its material is not in shared/drag/drag.xml: what it does in a drag is not known.";
    case SeatReason::needs_ears:
      return "The place needs ears in the gear's slots; it has none.";
    case SeatReason::needs_flats:
      return "The place needs flats on the sleeve; it has none.";
    case SeatReason::wrong_sort:
      return "A metal and a friction washer cannot take each other's place.";
    case SeatReason::must_be_free:
      return "It is held by ears or flats; here it must turn freely.";
    case SeatReason::flats_do_not_match:
      return "Its flats are not the sleeve's.";
    case SeatReason::too_thick:
      return "Thicker than the recess is deep.";
    case SeatReason::too_few:
      return "There are too few of them for the stack.";
    case SeatReason::turns_freely:
    case SeatReason::tight_outside:
    case SeatReason::tight_inside:
    case SeatReason::within_tolerance:
    case SeatReason::smaller_step:
      break;
  }
  return {};
}

void say_candidate(const Candidate& candidate, std::string& text) {
  text += washer(candidate);
  say(text, fmt::format("room outside {}, inside {}", room(candidate.outside_clearance),
                        room(candidate.inside_clearance)));
  if (candidate.fit == Fit::after_trimming) say_trimming(candidate, text);
  if (candidate.fit == Fit::not_at_all && has(candidate, SeatReason::tight_outside)) {
    say(text, "Tight in the recess.");
  }
  if (candidate.fit == Fit::not_at_all && has(candidate, SeatReason::tight_inside)) {
    say(text, "Tight on the sleeve.");
  }
  for (const SeatReason reason : candidate.reasons) {
    if (const auto sentence = why_not(reason); !sentence.empty()) say(text, std::string(sentence));
  }
  if (candidate.height_change && candidate.fit != Fit::not_at_all) {
    const double change = *candidate.height_change;
    if (change > 0.005) say(text, fmt::format("The stack grows by {}.", mm(change)));
    if (change < -0.005) say(text, fmt::format("The stack shrinks by {}.", mm(-change)));
  }
}

std::string_view title(const Candidate& candidate) {
  if (candidate.fit != Fit::not_at_all && has(candidate, SeatReason::too_few)) {
    return "Would fit, but there are too few";
  }
  switch (candidate.fit) {
    case Fit::as_it_is:
      return "Fits as it is";
    case Fit::one_size_down:
      return "Fits one size down";
    case Fit::after_trimming:
      return "Fits after trimming";
    case Fit::not_at_all:
      break;
  }
  return "Does not fit";
}

std::string press_sentence(const StackFinding& stack) {
  switch (stack.press) {
    case Press::presses:
      return "The star presses the stack.";
    case Press::spacer_on_post:
      return "The star does not press: the stack is lower than the fixed post, and the spacer "
             "stands "
             "on that.";
    case Press::star_on_housing:
      return "The star does not press: the sleeve has sunk below the rim, and the star rubs on the "
             "housing. There is too little stack.";
    case Press::doubtful:
      return "The star may touch before the stack is pressed: there is too little left to screw "
             "down.";
    case Press::not_determined:
      break;
  }
  return "Whether the star presses is not determined: measure post, spacer and housing, or how far "
         "the sleeve stands below the rim with the star off.";
}

void say_stack(const SeatAnswer& answer, std::string& text) {
  const StackFinding& stack = *answer.stack;
  text += "\nThe stack\n";
  if (stack.height) {
    say(text, fmt::format("{} rubbing {}, {} high", stack.faces,
                          stack.faces == 1 ? "face" : "faces", room(*stack.height)));
  } else if (!answer.request.stack.empty()) {
    say(text, fmt::format("{} rubbing {}; the height is not known, a thickness is missing",
                          stack.faces, stack.faces == 1 ? "face" : "faces"));
  }
  if (stack.proud) {
    say(text, stack.proud->low > 0
                  ? fmt::format("It stands {} out of the recess.", room(*stack.proud))
              : stack.proud->high < 0 ? fmt::format("It lies {} below the recess's rim.",
                                                    room({-stack.proud->high, -stack.proud->low}))
                                      : std::string("It is about level with the recess's rim."));
  }
  say(text, press_sentence(stack));
  if (stack.missing) {
    say(text, fmt::format("Add at least {} of washers.", mm(std::ceil(*stack.missing * 10) / 10)));
  }
}

void say_what_was_left_out(const SeatAnswer& answer, std::string& text) {
  if (answer.request.stock.empty()) return;
  if (answer.candidates.empty()) {
    text += answer.of_other_materials == 0
                ? "\nThe stock file has no washers.\n"
                : fmt::format("\nThe stock file has no washers of {}.\n", answer.request.material);
  }
  if (answer.of_other_materials > 0) {
    text +=
        fmt::format("\nOf other materials, and not looked at: {}.\n", answer.of_other_materials);
  }
}

}  // namespace

std::string seat_in_words(const SeatAnswer& answer) {
  const auto& seat = answer.request.seat;
  std::string text =
      fmt::format("Seat: recess {}, sleeve {}", gauge(seat.bore), gauge(seat.sleeve));
  if (seat.depth) text += ", depth " + gauge(*seat.depth);
  text += fmt::format(
      ".\nA washer turns freely with {:.2g} mm to spare outside and {:.2g} mm inside, on the "
      "diameter\n"
      "(the least room of the loose running fit H9/d9, ISO 286).\n",
      running_clearance(*answer.knowledge, seat.bore.value),
      running_clearance(*answer.knowledge, seat.sleeve.value));
  if (answer.stack) say_stack(answer, text);
  std::string_view last;
  for (const Candidate& candidate : answer.candidates) {
    const std::string_view heading = title(candidate);
    if (heading != last) text += fmt::format("\n{}\n", heading);
    last = heading;
    say_candidate(candidate, text);
  }
  if (std::any_of(answer.candidates.begin(), answer.candidates.end(),
                  [](const Candidate& one) { return one.fit == Fit::after_trimming; })) {
    text += std::string("\n") + kTrimming;
  }
  say_what_was_left_out(answer, text);
  return text;
}

}  // namespace winchbook::answers
