#include <fmt/format.h>

#include <cmath>
#include <utility>
#include <variant>

#include "answers/seat.h"

namespace winchbook::answers {
namespace {

using assess::fitting::Candidate;
using assess::fitting::Fit;
using assess::fitting::Gauge;
using assess::fitting::running_clearance;
using assess::fitting::SeatReason;
using assess::fitting::Span;
using assess::fitting::StackFinding;
using assess::fitting::Turns;

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

/// Whether the heading or the fit says it, or nobody need hear it.
bool told_elsewhere(SeatReason reason) {
  switch (reason) {
    case SeatReason::turns_freely:
    case SeatReason::tight_outside:
    case SeatReason::tight_inside:
    case SeatReason::within_tolerance:
    case SeatReason::smaller_step:
      return true;
    default:
      return false;
  }
}

/// The answer, a part after the other.
class Telling {
 public:
  Telling(const SeatAnswer& answer, const words::Catalogue& words)
      : answer_(answer), words_(words) {}

  Blocks told() && {
    seat();
    if (answer_.stack) stack();
    candidates();
    left_out();
    return std::move(blocks_);
  }

 private:
  void seat() {
    const auto& seat = answer_.request.seat;
    std::vector<std::string> sizes{
        words_.say("answer.seat.recess", {{"size", gauge(seat.bore)}}),
        words_.say("answer.seat.sleeve", {{"size", gauge(seat.sleeve)}})};
    if (seat.depth)
      sizes.push_back(words_.say("answer.seat.depth", {{"size", gauge(*seat.depth)}}));
    const auto clearance = [&](const Gauge& of) {
      return fmt::format("{:.2g} mm", running_clearance(*answer_.knowledge, of.value));
    };
    blocks_.emplace_back(paragraph(
        words_.say("answer.seat.seat", {{"sizes", words_.joined("join.comma", sizes)}}) + "\n" +
        words_.say("answer.seat.clearance",
                   {{"outside", clearance(seat.bore)}, {"inside", clearance(seat.sleeve)}})));
  }

  void stack() {
    const StackFinding& stack = *answer_.stack;
    std::vector<std::string> items;
    if (stack.height) {
      items.push_back(words_.say("answer.seat.stack-height",
                                 {{"faces", stack.faces}, {"height", room(*stack.height)}}));
    } else if (!answer_.request.stack.empty()) {
      items.push_back(words_.say("answer.seat.stack-no-height", {{"faces", stack.faces}}));
    }
    if (stack.proud && stack.proud->low > 0) {
      items.push_back(words_.say("answer.seat.proud", {{"room", room(*stack.proud)}}));
    } else if (stack.proud && stack.proud->high < 0) {
      items.push_back(words_.say("answer.seat.below",
                                 {{"room", room({-stack.proud->high, -stack.proud->low})}}));
    } else if (stack.proud) {
      items.push_back(words_.say("answer.seat.level"));
    }
    items.push_back(called(words_, "answer.seat.press", stack.press));
    if (stack.missing) {
      items.push_back(
          words_.say("answer.seat.missing", {{"height", mm(std::ceil(*stack.missing * 10) / 10)}}));
    }
    blocks_.emplace_back(paragraph(words_.say("answer.seat.stack")));
    blocks_.emplace_back(list_of(items));
  }

  std::string washer(const Candidate& candidate) const {
    const auto& of = candidate.washer;
    std::vector<std::string> parts{words_.say(
        "answer.seat.washer", {{"line", fmt::format("{}", of.line)},
                               {"donor", of.donor},
                               {"material", of.material},
                               {"size", fmt::format("{:.4g} × {:.4g} × {:.4g} mm", of.outside,
                                                    of.inside, of.thickness)}})};
    if (of.turns == Turns::with_gear) parts.push_back(words_.say("answer.seat.ears"));
    if (of.turns == Turns::with_sleeve) parts.push_back(words_.say("answer.seat.flats"));
    if (of.count != 1) parts.push_back(words_.say("answer.seat.several", {{"count", of.count}}));
    parts.push_back(of.price);
    return words_.joined("join.comma", parts);
  }

  /// What must be cut, and from where.
  void trimming(const Candidate& candidate, std::string& text) const {
    if (candidate.trim_outside > 0) {
      const char* how = has(candidate, SeatReason::tight_outside)      ? "answer.seat.trim.tight"
                        : has(candidate, SeatReason::within_tolerance) ? "answer.seat.trim.may-bind"
                                                                       : "answer.seat.trim.close";
      text += "\n" + words_.say("answer.seat.trim",
                                {{"how", words_.say(how)},
                                 {"off", mm(candidate.trim_outside)},
                                 {"round", fmt::format("{:.2g} mm", candidate.trim_outside / 2)},
                                 {"to", mm(candidate.washer.outside - candidate.trim_outside)}});
    }
    if (candidate.open_inside > 0) {
      const char* how = has(candidate, SeatReason::tight_inside) ? "answer.seat.open.tight"
                                                                 : "answer.seat.open.may-bind";
      text += "\n" + words_.say("answer.seat.open",
                                {{"how", words_.say(how)},
                                 {"by", mm(candidate.open_inside)},
                                 {"to", mm(candidate.washer.inside + candidate.open_inside)}});
    }
  }

  std::string item(const Candidate& candidate) const {
    const bool fits = candidate.fit != Fit::not_at_all;
    std::string text =
        washer(candidate) + "\n" +
        words_.say("answer.seat.room", {{"outside", room(candidate.outside_clearance)},
                                        {"inside", room(candidate.inside_clearance)}});
    const auto say = [&](bool so, const char* key) {
      if (so) text += "\n" + words_.say(key);
    };
    if (candidate.fit == Fit::after_trimming) trimming(candidate, text);
    say(!fits && has(candidate, SeatReason::tight_outside), "answer.seat.tight-outside");
    say(!fits && has(candidate, SeatReason::tight_inside), "answer.seat.tight-inside");
    for (const SeatReason reason : candidate.reasons) {
      if (!told_elsewhere(reason)) text += "\n" + called(words_, "answer.seat.reason", reason);
    }
    constexpr double kFelt = 0.005;  // mm
    const double change = fits ? candidate.height_change.value_or(0) : 0;
    if (change > kFelt) text += "\n" + words_.say("answer.seat.grows", {{"by", mm(change)}});
    if (change < -kFelt) text += "\n" + words_.say("answer.seat.shrinks", {{"by", mm(-change)}});
    return text;
  }

  std::string heading(const Candidate& candidate) const {
    if (candidate.fit != Fit::not_at_all && has(candidate, SeatReason::too_few))
      return words_.say("answer.seat.too-few");
    return called(words_, "answer.seat.fit", candidate.fit);
  }

  void candidates() {
    std::string last;
    bool any_to_trim = false;
    for (const Candidate& candidate : answer_.candidates) {
      const std::string now = heading(candidate);
      if (now != last) {
        blocks_.emplace_back(paragraph(now));
        blocks_.emplace_back(document::List{});
      }
      last = now;
      std::get<document::List>(blocks_.back()).items.push_back(document::in_lines(item(candidate)));
      any_to_trim = any_to_trim || candidate.fit == Fit::after_trimming;
    }
    if (any_to_trim) blocks_.emplace_back(paragraph(words_.say("answer.seat.trimming")));
  }

  void left_out() {
    if (answer_.request.stock.empty()) return;
    if (answer_.candidates.empty()) {
      blocks_.emplace_back(paragraph(answer_.of_other_materials == 0
                                         ? words_.say("answer.seat.no-washers")
                                         : words_.say("answer.seat.none-of-material",
                                                      {{"material", answer_.request.material}})));
    }
    if (answer_.of_other_materials > 0) {
      blocks_.emplace_back(
          paragraph(words_.say("answer.seat.other-materials",
                               {{"count", fmt::format("{}", answer_.of_other_materials)}})));
    }
  }

  const SeatAnswer& answer_;
  const words::Catalogue& words_;
  Blocks blocks_;
};

}  // namespace

Blocks seat_told(const SeatAnswer& answer, const words::Catalogue& words) {
  return Telling(answer, words).told();
}

}  // namespace winchbook::answers
