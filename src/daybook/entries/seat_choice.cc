#include "daybook/entries/seat_choice.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "record/find_named.h"

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
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] -= 'a' - 'A';
  return text;
}

/// What follows from the chosen washer.
FitRequest fit_of(const JudgedSeat& judged, const Candidate& candidate, FitRequest request) {
  const auto& washer = candidate.washer;
  const auto& seat = judged.seat;
  if (request.name.empty()) request.name = capital(washer.material + " washers");
  request.material = washer.material;
  request.count = judged.wanted;
  request.donor = washer.donor;
  request.adaptation = adaptation_of(candidate);
  request.bore = fmt::format("{:.4g}", seat.sleeve.value);
  request.outside = fmt::format("{:.4g}", seat.bore.value);
  if (seat.depth) request.depth = fmt::format("{:.4g}", seat.depth->value);
  request.seat_note = seat_note(judged, candidate);
  return request;
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

base::Result<int> count_of_part(const library::World& world, const std::filesystem::path& record,
                                std::string_view part) {
  const auto loaded = recordfile::read(world.files, record, world.data / "schemas");
  if (!loaded) return loaded.faults();
  const auto piece = record::find_piece(loaded->record, part);
  if (!piece) return piece.faults();
  return piece.value()->count;
}

base::Result<Change> fit_choice(const JudgedSeat& judged, SeatChoice choice) {
  const auto chosen =
      std::find_if(judged.candidates.begin(), judged.candidates.end(),
                   [&](const Candidate& one) { return one.washer.line == choice.line; });
  if (chosen == judged.candidates.end()) {
    return base::of_command(base::error(
        fmt::format("--choose: line {} of the stock has no washer that was looked at", choice.line),
        "take a line that winchbook seat lists", "command-choice"));
  }
  if (chosen->fit == Fit::not_at_all) {
    return base::of_command(base::error(
        fmt::format("--choose: the washer of line {} does not fit this seat", choice.line),
        "leave --choose away to read why, and which do", "command-choice"));
  }
  if (has(*chosen, SeatReason::too_few)) {
    return base::of_command(
        base::of_command(base::error(fmt::format("--choose: line {} has {} of them, and {} are wanted", choice.line,
                                chosen->washer.count, judged.wanted),
                    "take another line, or count the stock again", "command-choice")));
  }
  FitRequest request = fit_of(judged, *chosen, std::move(choice.said));
  return Change([request = std::move(request),
                 part = std::move(choice.part)](Draft& draft) mutable -> base::Result<Said> {
    const auto old = record::find_piece(draft.record(), part);
    if (!old) return old.faults();
    const record::PlaceId* place = place_of(draft.record(), old.value()->id);
    if (place == nullptr) {
      return base::of_command(
          base::of_command(base::error_at(draft.loaded().where(old.value()->id.text),
                         old.value()->name + " never sat in a place of this reel",
                         "name the part that the washers take the place of", "command-choice")));
    }
    request.place = place->text;
    request.instead_of = old.value()->id.text;
    return fit(request)(draft);
  });
}

}  // namespace winchbook::daybook
