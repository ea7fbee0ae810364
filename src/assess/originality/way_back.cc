#include "assess/originality/way_back.h"

#include <algorithm>

#include "assess/originality/piece.h"

namespace winchbook::assess::originality {
namespace {

using base::Ratio;
using base::RatioRange;
using Outcome = Return::Outcome;
using Because = Return::Because;

Ratio degree_of(const base::Percent& percent) {
  return {hundredths(percent), 10000};
}

Ends times(const Ends& ends, Ratio factor) {
  return {ends.at_low * factor, ends.at_high * factor};
}

RatioRange plus(const RatioRange& range, const Ends& ends) {
  return {range.low + ends.at_low, range.high + ends.at_high};
}

Ends lost(const RatioRange& found, const RatioRange& left) {
  return {found.low - left.low, found.high - left.high};
}

Because where_is(const record::Piece& piece) {
  using Kind = record::Whereabouts::Kind;
  switch (piece.now.kind) {
    case Kind::fitted:
    case Kind::bagged:
    case Kind::to_owner:
    case Kind::with_reel:
      return Because::at_hand;
    case Kind::kept_by_bench:
      return Because::kept_by_bench;
    case Kind::lost:
      return Because::lost;
    case Kind::scrapped:
      return Because::scrapped;
    case Kind::not_known:
      break;
  }
  return Because::whereabouts_not_known;
}

/// The way back of a fitting, or of the piece that was taken out when nothing was put in.
std::optional<record::WayBack> written_way_back(const record::Record& record,
                                                const record::Visit& visit, const PieceRow& row) {
  if (row.fitting) return find(record, *row.fitting)->way_back;
  for (const record::Fitting& fitting : record.fittings) {
    if (row.found.piece && fitting.piece == *row.found.piece && fitting.removed_in == visit.id) {
      return fitting.way_back;
    }
  }
  return std::nullopt;
}

Return return_of(const record::Record& record, const record::Visit& visit, const PieceRow& row) {
  Return back;
  back.row = row.number;
  back.fitting = row.fitting;
  if (row.fitting) back.reel_altered = find(record, *row.fitting)->reel_altered;
  if (!row.found.piece) {
    back.outcome = Outcome::nothing_there;
    back.because = Because::was_missing;
    return back;
  }
  back.old_piece = row.found.piece;
  const Ends original = lost(row.found.original, row.left.original);
  const Ends surface = lost(row.found.surface_points, row.left.surface_points);
  const record::Piece* old = find(record, *row.found.piece);
  back.because = old == nullptr ? Because::whereabouts_not_known : where_is(*old);
  if (back.because == Because::whereabouts_not_known) {
    back.outcome = Outcome::not_determined;
    back.original.at_high = original.at_high;
    back.untouched_surface.at_high = surface.at_high;
    return back;
  }
  if (back.because != Because::at_hand) {
    back.outcome = Outcome::never;
    return back;
  }
  const std::optional<record::WayBack> way = written_way_back(record, visit, row);
  if (!way) {
    back.outcome = Outcome::not_determined;
    back.original.at_high = original.at_high;
    back.untouched_surface.at_high = surface.at_high;
    return back;
  }
  back.degree = way->degree;
  const Ratio degree = degree_of(way->degree);
  back.original = times(original, degree);
  back.untouched_surface = times(surface, degree);
  if (degree == Ratio()) {
    back.outcome = Outcome::never;
    back.because = Because::degree_nought;
  } else {
    const bool whole = degree == Ratio(1, 1) && !back.reel_altered;
    back.outcome = whole ? Outcome::fully : Outcome::in_part;
  }
  return back;
}

/// The least degree that the visit's cleaning and work on the piece write; nothing written, nothing
/// comes back.
Ratio surface_degree(const record::Visit& visit, const record::PieceId& piece) {
  std::optional<Ratio> least;
  const auto weigh = [&](const auto& done) {
    if (!done.way_back) return;
    if (std::find(done.pieces.begin(), done.pieces.end(), piece) == done.pieces.end()) return;
    const Ratio degree = degree_of(done.way_back->degree);
    least = least ? std::min(*least, degree) : degree;
  };
  for (const record::Cleaning& cleaning : visit.cleaning) {
    weigh(cleaning);
  }
  for (const record::Work& work : visit.work) {
    weigh(work);
  }
  return least.value_or(Ratio());
}

void count(WayBack& way, Outcome outcome) {
  switch (outcome) {
    case Outcome::fully:
      ++way.fully;
      break;
    case Outcome::in_part:
      ++way.in_part;
      break;
    case Outcome::never:
      ++way.never;
      break;
    case Outcome::not_determined:
      ++way.not_determined;
      break;
    case Outcome::nothing_there:
      ++way.nothing_there;
      break;
  }
}

}  // namespace

WayBack way_back(const record::Record& record, const record::Visit& visit, const Finding& finding) {
  WayBack way;
  // Without both ends there is no way to speak of.
  if (finding.original.found) way.original_restored = finding.original.left;
  if (finding.untouched_surface.found)
    way.untouched_surface_restored = finding.untouched_surface.left;
  const auto give_back = [](std::optional<RatioRange>& index, const Ends& ends) {
    if (index) index = plus(*index, ends);
  };
  for (const PieceRow& row : finding.rows) {
    if (row.changed) {
      const Return back = return_of(record, visit, row);
      count(way, back.outcome);
      give_back(way.original_restored, back.original);
      give_back(way.untouched_surface_restored, back.untouched_surface);
      way.returns.push_back(back);
      continue;
    }
    const Ends gone = lost(row.found.surface_points, row.left.surface_points);
    if (gone == Ends{} || !row.found.piece) continue;
    const Ends recovered = times(gone, surface_degree(visit, *row.found.piece));
    give_back(way.untouched_surface_restored, recovered);
    way.surface_losses.push_back({row.number, gone, recovered});
  }
  return way;
}

}  // namespace winchbook::assess::originality
