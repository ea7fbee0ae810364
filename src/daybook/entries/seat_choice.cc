#include "daybook/entries/seat_choice.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "base/words_of_text.h"
#include "daybook/named_parts.h"

namespace winchbook::daybook {
namespace {

using assess::fitting::Candidate;
using assess::fitting::Fit;
using assess::fitting::SeatReason;

/// The place a part sits in, or sat in last.
const record::PlaceId* place_of(const record::Record& record, const record::PieceId& part) {
  const record::PlaceId* place = nullptr;
  for (const record::Fitting& fitting : record.fittings) {
    if (fitting.piece == part) place = &fitting.place;
  }
  return place;
}

/// The recess and what goes through it, with the room the washers have once they are trimmed.
std::string seat_note(const JudgedSeat& judged, const Candidate& candidate) {
  const auto room = [](const assess::fitting::Span& span, double more) {
    return fmt::format("{:.2f} to {:.2f} mm", span.low + more + 0.0, span.high + more + 0.0);
  };
  return fmt::format(
      "The recess, over the sleeve; room outside {}, inside {}, with calipers ±{:.2g} mm.",
      room(candidate.outside_clearance, candidate.trim_outside),
      room(candidate.inside_clearance, candidate.open_inside), judged.caliper);
}

std::string capital(std::string text) {
  if (!text.empty()) text.front() = base::in_capitals(text.front());
  return text;
}

/// To four figures; empty when they are too few to write it without a power of ten.
std::optional<base::Millimetres> millimetres(double length) {
  const auto decimal = base::Decimal::parse(fmt::format("{:.4g}", length));
  return decimal ? std::optional(base::Millimetres{*decimal}) : std::nullopt;
}

/// What follows from the chosen washer.
FitRequest fit_of(const JudgedSeat& judged, const Candidate& candidate, FitRequest request) {
  const auto& washer = candidate.washer;
  const auto& seat = judged.seat;
  if (request.name.empty()) request.name = capital(washer.material + " washers");
  request.material = washer.material;
  request.count = judged.wanted;
  request.supplier = washer.supplier;
  if (washer.supplier.empty()) request.donor = washer.donor;
  if (washer.report) {
    const auto day = base::EdtfDate::parse(washer.report->on);
    request.tested = record::LaboratoryReport{record::Hazard::asbestos, record::Looked::none,
                                              washer.report->laboratory,
                                              day ? *day : base::EdtfDate{}, washer.report->number};
  }
  request.adaptation = adaptation_of(candidate);
  request.bore = millimetres(seat.sleeve.value);
  request.outside = millimetres(seat.bore.value);
  if (seat.depth) request.depth = millimetres(seat.depth->value);
  request.seat_note = seat_note(judged, candidate);
  return request;
}

/// The washer of the chosen line, if it can be taken.
base::Result<const Candidate*> chosen(const JudgedSeat& judged, int line) {
  const auto found = std::find_if(judged.candidates.begin(), judged.candidates.end(),
                                  [&](const Candidate& one) { return one.washer.line == line; });
  if (found == judged.candidates.end()) {
    return base::of_command(base::error(
        fmt::format("--choose: line {} of the stock has no washer that was looked at", line),
        "take a line that winchbook seat lists", "command-choice"));
  }
  if (found->fit == Fit::not_at_all) {
    return base::of_command(
        base::error(fmt::format("--choose: the washer of line {} does not fit this seat", line),
                    "leave --choose away to read why, and which do", "command-choice"));
  }
  if (has(*found, SeatReason::too_few)) {
    return base::of_command(
        base::error(fmt::format("--choose: line {} has {} of them, and {} are wanted", line,
                                found->washer.count, judged.wanted),
                    "take another line, or count the stock again", "command-choice"));
  }
  return &*found;
}

}  // namespace

std::string adaptation_of(const Candidate& candidate) {
  const auto& washer = candidate.washer;
  std::string text;
  if (candidate.trim_outside > 0) {
    text += fmt::format(
        "Trimmed {:.4g} mm on the outside, from {:.4g} to {:.4g} mm, so that they turn freely.",
        candidate.trim_outside, washer.outside, washer.outside - candidate.trim_outside);
  }
  if (candidate.open_inside > 0) {
    text += fmt::format("{}Opened {:.4g} mm in the hole, from {:.4g} to {:.4g} mm.",
                        text.empty() ? "" : " ", candidate.open_inside, washer.inside,
                        washer.inside + candidate.open_inside);
  }
  if (text.empty()) {
    return candidate.fit == Fit::one_size_down
               ? "Not at all: one size smaller than the seat, they turn freely as they came."
               : "Not at all: they turn freely as they came.";
  }
  if (candidate.open_inside <= 0) return text + " Holes and thickness as they came.";
  return text + (candidate.trim_outside > 0 ? " Thickness as they came."
                                            : " Outside and thickness as they came.");
}

base::Result<Said> fit_choice(const JudgedSeat& judged, const SeatChoice& choice, Draft& draft) {
  const auto candidate = chosen(judged, choice.line.value_or(0));
  if (!candidate) return candidate.faults();
  const auto old = piece_named(draft, choice.part);
  if (!old) return old.faults();
  const record::PlaceId* place = place_of(draft.record(), old.value()->id);
  if (place == nullptr) {
    return base::of_command(base::error_at(draft.loaded().where(old.value()->id.text),
                                           old.value()->name + " never sat in a place of this reel",
                                           "name the part that the washers take the place of",
                                           "command-choice"));
  }
  FitRequest request = fit_of(judged, **candidate, choice.said);
  request.place = place->text;
  request.instead_of = old.value()->id.text;
  return fit(request, draft);
}

}  // namespace winchbook::daybook
