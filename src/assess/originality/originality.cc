#include "assess/originality/originality.h"

#include <algorithm>
#include <utility>

#include "assess/originality/assembled.h"
#include "assess/originality/piece.h"
#include "assess/originality/seats.h"
#include "assess/originality/way_back.h"
#include "record/entered.h"
#include "record/moments.h"

namespace winchbook::assess::originality {
namespace {

using base::Ratio;
using base::RatioRange;
using record::Moment;
using record::OfThisReel;

constexpr RatioRange kNothing{Ratio(0, 1), Ratio(0, 1)};
constexpr RatioRange kFull{Ratio(1, 1), Ratio(1, 1)};
constexpr RatioRange kAnything{Ratio(0, 1), Ratio(1, 1)};

/// A row with what each question counts for it, from 0 to 1, before weights.
struct Draft {
  PieceRow row;
  std::int64_t units = 0;          ///< of weight, all seats
  std::int64_t surface_units = 0;  ///< 0 when no surface of this reel's own came
  RatioRange original_found = kNothing, original_left = kNothing;
  RatioRange surface_found = kNothing, surface_left = kNothing;
  RatioRange model_found = kNothing, model_left = kNothing;
};

struct Bench {
  const record::Record& record;
  const record::Visit& visit;
  const knowledge::OriginalityRules& rules;
  const knowledge::PartsList* parts;
};

/// A row or a side of one; each reason is noted once.
template <class Noting> void note(Noting& noting, Reason reason) {
  auto& reasons = noting.reasons;
  if (std::find(reasons.begin(), reasons.end(), reason) == reasons.end()) {
    reasons.push_back(reason);
  }
}

RatioRange counted(OfThisReel answer) {
  if (answer == OfThisReel::yes) return kFull;
  return answer == OfThisReel::no ? kNothing : kAnything;
}

/// What an occupant counts as original.
RatioRange original_credit(const Bench& bench, const Occupant& occupant, Side& side) {
  switch (occupant.kind) {
    case Occupant::Kind::piece: {
      const Originality original = of_this_reel(bench.record, *occupant.piece);
      note(side, original.reason);
      return counted(original.answer);
    }
    case Occupant::Kind::empty:
      note(side, Reason::place_empty);
      return kNothing;
    case Occupant::Kind::not_examined:
      note(side, Reason::place_not_examined);
      return kAnything;
    case Occupant::Kind::not_described:
      note(side, Reason::piece_not_described);
      return kAnything;
  }
  return kAnything;
}

RatioRange model_credit(const Bench& bench, const Occupant& occupant) {
  if (occupant.kind == Occupant::Kind::piece) return pattern_credit(*occupant.piece, bench.rules);
  return occupant.kind == Occupant::Kind::empty ? kNothing : kAnything;
}

Side side_of(const Bench& bench, const Occupant& occupant, Moment moment) {
  Side side;
  if (occupant.kind == Occupant::Kind::empty) side.standing = Standing::missing;
  if (occupant.piece == nullptr) return side;
  const record::Piece& piece = *occupant.piece;
  side.piece = piece.id;
  side.standing = standing(bench.record, piece, of_this_reel(bench.record, piece).answer);
  side.makers_surface =
      side.standing == Standing::original || side.standing == Standing::not_determined ||
      side.standing == Standing::same_maker || side.standing == Standing::service_spare;
  const auto state = state_of(bench.record, bench.visit, piece.id, moment);
  if (side.makers_surface && state) side.surface = state->surface;
  return side;
}

/// The bench can only take away: what is there as left was there as found, and no more is left than
/// was found. Written otherwise, the figures are held, and the row says so.
void hold(RatioRange& found, RatioRange& left, PieceRow& row) {
  if (left.low > found.high) {
    note(row, Reason::held_at_found);
    left.low = found.high;
  }
  if (left.high > found.high) {
    left.high = found.high;
    note(row, Reason::held_at_found);
  }
  if (left.low > found.low) {
    found.low = left.low;
    note(row, Reason::found_at_least_as_left);
  }
}

/// The surface of the piece that counts as found, then and now.
void weigh_surface(const Bench& bench, const SeatGroup& group, Draft& draft) {
  const record::Piece* own = group.came_loose ? group.left.piece : group.found.piece;
  if (own == nullptr || draft.units == 0) return;
  const OfThisReel original = of_this_reel(bench.record, *own).answer;
  if (original == OfThisReel::no) return;
  draft.surface_units = draft.units;
  if (own == group.found.piece) draft.row.found.surface_weighed = true;
  const bool stays = own == group.left.piece;
  if (stays) draft.row.left.surface_weighed = true;
  if (original == OfThisReel::not_determined) {
    note(draft.row, Reason::surface_perhaps_anothers);
    draft.surface_found = kAnything;
    draft.surface_left = stays ? kAnything : kNothing;
    return;
  }
  const auto credit = [&](Moment moment) {
    const SurfaceCredit one = surface_credit(bench.record, bench.visit, *own, moment, bench.rules);
    for (const Reason reason : one.reasons) {
      note(draft.row, reason);
    }
    return one.kept;
  };
  draft.surface_found = credit(Moment::found);
  draft.surface_left = stays ? credit(Moment::left) : kNothing;
  hold(draft.surface_found, draft.surface_left, draft.row);
}

std::vector<record::MarkingId> marks_on(const record::Record& record, const record::Piece& piece) {
  std::vector<record::MarkingId> marks;
  for (const record::Marking& marking : record.markings) {
    if (marking.piece == piece.id) marks.push_back(marking.id);
  }
  return marks;
}

/// Nobody wrote how it was as left: the acts entered say it.
bool not_graded_again(const record::Visit& visit, const record::Piece* piece) {
  if (piece == nullptr) return false;
  const auto* found = record::state_entered(visit, piece->id, Moment::found);
  return found != nullptr && !found->surface.empty() &&
         record::state_entered(visit, piece->id, Moment::left) == nullptr;
}

Draft draft_row(const Bench& bench, const record::Place& place, const SeatGroup& group,
                const SeatWeight& seat, bool only_group) {
  Draft draft;
  PieceRow& row = draft.row;
  row.place = place.id;
  const record::Piece* piece = group.found.piece != nullptr ? group.found.piece : group.left.piece;
  row.name = only_group || piece == nullptr ? place.name : piece->name;
  row.assembly = place.assembly;
  row.seats = group.seats;
  row.found = side_of(bench, group.found, Moment::found);
  row.left = side_of(bench, group.left, Moment::left);
  row.changed = group.found.piece != group.left.piece;
  if (group.fitting != nullptr) row.fitting = group.fitting->id;
  if (piece != nullptr) {
    row.evidence = piece->of_this_reel.evidence;
    row.marks = marks_on(bench.record, *piece);
  }
  note(row, seat.reason);
  if (not_graded_again(bench.visit, group.left.piece)) note(row, Reason::no_entry_changed_it);
  const bool left_so = place.may_be_empty && !was_ever_filled(bench.record, place.id);
  if (left_so) {
    if (group.found.piece == nullptr) row.found.standing = Standing::left_empty;
    if (group.left.piece == nullptr) row.left.standing = Standing::left_empty;
  }
  draft.units = left_so ? 0 : seat.units * group.seats;
  row.weighed = draft.units > 0;

  draft.original_found = original_credit(bench, group.found, row.found);
  draft.original_left = original_credit(bench, group.left, row.left);
  if (group.came_loose) {
    note(row, Reason::came_loose);
    const RatioRange loose = draft.original_left;
    draft.original_found = {std::max(draft.original_found.low, loose.low),
                            std::max(draft.original_found.high, loose.high)};
  }
  // Something undescribed stands where nothing was: it is not original.
  if (group.found.kind == Occupant::Kind::empty && group.left.piece == nullptr) {
    draft.original_left = kNothing;
  }
  hold(draft.original_found, draft.original_left, row);
  draft.model_found = model_credit(bench, group.found);
  draft.model_left = model_credit(bench, group.left);
  weigh_surface(bench, group, draft);
  return draft;
}

RatioRange of_whole(const RatioRange& credit, std::int64_t units, base::Wide whole) {
  if (whole == 0 || units == 0) return kNothing;
  const Ratio share(units, whole);
  return {credit.low * share, credit.high * share};
}

RatioRange operator+(const RatioRange& a, const RatioRange& b) {
  return {a.low + b.low, a.high + b.high};
}

/// An index and its change, from one figure of each row.
void sum_up(const std::vector<PieceRow>& rows, RatioRange Side::*figure, Index& index,
            Change& change) {
  RatioRange found = kNothing;
  RatioRange left = kNothing;
  for (const PieceRow& row : rows) {
    const RatioRange& before = row.found.*figure;
    const RatioRange& after = row.left.*figure;
    found = found + before;
    left = left + after;
    if (before == after) continue;
    change.shares.push_back({row.number, after.low - before.low, after.high - before.high});
  }
  index = {found, left};
}

void count(Counts& counts, const Side& side, int seats) {
  if (side.standing == Standing::left_empty) return;
  counts.places_for += seats;
  switch (side.standing) {
    case Standing::original:
      counts.original += seats;
      break;
    case Standing::not_determined:
      counts.not_determined += seats;
      break;
    case Standing::life:
      counts.life += seats;
      break;
    case Standing::missing:
      counts.missing += seats;
      break;
    default:
      counts.other += seats;
  }
}

std::string letters(int number) {
  std::string text;
  for (int rest = number; rest >= 0; rest = rest / 26 - 1) {
    text.insert(text.begin(), static_cast<char>('A' + rest % 26));
  }
  return text;
}

std::vector<Draft> draft_rows(const Bench& bench) {
  std::vector<Draft> drafts;
  for (const record::Place& place : bench.record.places) {
    if (!record::is_entered(bench.record, place)) continue;
    const std::vector<SeatGroup> groups = seat_groups(bench.record, bench.visit, place);
    const SeatWeight seat = seat_weight(place, bench.parts);
    for (const SeatGroup& group : groups) {
      drafts.push_back(draft_row(bench, place, group, seat, groups.size() == 1));
    }
  }
  return drafts;
}

/// Weighs the drafts against each other.
std::vector<PieceRow> weighed(std::vector<Draft> drafts) {
  base::Wide whole = 0;
  base::Wide surface_whole = 0;
  for (const Draft& draft : drafts) {
    whole += draft.units;
    surface_whole += draft.surface_units;
  }
  std::vector<PieceRow> rows;
  for (Draft& draft : drafts) {
    PieceRow& row = draft.row;
    row.number = static_cast<int>(rows.size()) + 1;
    if (draft.units > 0) row.weight = Ratio(draft.units, whole);
    row.found.original = of_whole(draft.original_found, draft.units, whole);
    row.left.original = of_whole(draft.original_left, draft.units, whole);
    row.found.right_for_model = of_whole(draft.model_found, draft.units, whole);
    row.left.right_for_model = of_whole(draft.model_left, draft.units, whole);
    row.found.surface_points = of_whole(draft.surface_found, draft.surface_units, surface_whole);
    row.left.surface_points = of_whole(draft.surface_left, draft.surface_units, surface_whole);
    rows.push_back(std::move(row));
  }
  return rows;
}

void letter_rows(Finding& finding) {
  for (const Entry& entry : finding.second_ledger) {
    for (PieceRow& row : finding.rows) {
      if (row.fitting == entry.fitting) row.letter = entry.letter;
    }
  }
}

/// Without a reel to speak of there is no index of what is its own.
void withhold(const Assembled& assembled, Finding& finding) {
  const bool found = assembled.when == Moment::found;
  for (Index* index : {&finding.original, &finding.untouched_surface}) {
    (found ? index->found : index->left).reset();
  }
  finding.original_change.shares.clear();
  finding.untouched_surface_change.shares.clear();
}

void drop_if_unweighed(Finding& finding) {
  const auto any = [&](auto weighs) {
    return std::any_of(finding.rows.begin(), finding.rows.end(), weighs);
  };
  if (!any([](const PieceRow& row) { return row.weighed; })) {
    finding.original = {};
    finding.right_for_model = {};
  }
  if (!any([](const PieceRow& row) {
        return row.weighed && (row.found.surface_weighed || row.left.surface_weighed);
      })) {
    finding.untouched_surface = {};
  }
}

std::vector<record::PieceId> loose_not_refitted(const Bench& bench,
                                                const std::vector<PieceRow>& rows) {
  std::vector<record::PieceId> pieces;
  for (const record::PieceFinding& one : bench.visit.findings.pieces) {
    if (!one.found || one.found->presence != record::Presence::loose) continue;
    const bool refitted = std::any_of(
        rows.begin(), rows.end(), [&](const PieceRow& row) { return row.left.piece == one.piece; });
    if (!refitted) pieces.push_back(one.piece);
  }
  return pieces;
}

}  // namespace

std::vector<Entry> second_ledger(const record::Record& record, const record::Visit& visit) {
  std::vector<Entry> entries;
  for (const record::Fitting& fitting : record.fittings) {
    const record::Piece* piece = find(record, fitting.piece);
    if (fitting.visit != visit.id || piece == nullptr) continue;
    if (of_this_reel(record, *piece).answer != OfThisReel::no) continue;
    entries.push_back({letters(static_cast<int>(entries.size())), fitting.id});
  }
  return entries;
}

Finding assess(const record::Record& record, const record::Visit& visit,
               const knowledge::OriginalityRules& rules, const knowledge::PartsList* parts) {
  const Bench bench{record, visit, rules, parts};
  Finding finding;
  finding.visit = visit.id;
  finding.rows = weighed(draft_rows(bench));
  finding.second_ledger = second_ledger(record, visit);
  letter_rows(finding);
  sum_up(finding.rows, &Side::original, finding.original, finding.original_change);
  sum_up(finding.rows, &Side::surface_points, finding.untouched_surface,
         finding.untouched_surface_change);
  sum_up(finding.rows, &Side::right_for_model, finding.right_for_model,
         finding.right_for_model_change);
  drop_if_unweighed(finding);
  for (const Moment moment : {Moment::found, Moment::left}) {
    if (const auto mixed = assembled(record, finding, moment, rules)) {
      finding.assembled.push_back(*mixed);
      finding.reels = std::max(finding.reels, mixed->at_least_reels);
    }
    finding.reels = std::max(finding.reels, reels_of_weight(record, finding, moment, rules));
  }
  for (const Assembled& mixed : finding.assembled) {
    withhold(mixed, finding);
  }
  finding.way_back = way_back(record, visit, finding);
  for (const PieceRow& row : finding.rows) {
    count(finding.found, row.found, row.seats);
    count(finding.left, row.left, row.seats);
  }
  finding.loose_not_refitted = loose_not_refitted(bench, finding.rows);
  for (const record::Place* place : record::places_not_entered(record)) {
    finding.places_not_entered.push_back(place->id);
  }
  return finding;
}

}  // namespace winchbook::assess::originality
