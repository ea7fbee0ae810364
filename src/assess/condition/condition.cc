#include "assess/condition/condition.h"

#include <algorithm>
#include <map>
#include <utility>

#include "assess/condition/readings.h"
#include "record/moments.h"

namespace winchbook::assess::condition {
namespace {

using record::Moment;

/// The faults there at one moment, gravest first.
std::vector<record::FaultId> faults_at(const record::Visit& visit, Moment moment) {
  std::vector<std::pair<record::Severity, record::FaultId>> there;
  for (const record::Fault& fault : visit.findings.faults) {
    const auto severity = record::severity_at(fault, moment);
    if (severity) there.emplace_back(*severity, fault.id);
  }
  std::stable_sort(there.begin(), there.end(),
                   [](const auto& a, const auto& b) { return a.first > b.first; });
  std::vector<record::FaultId> faults;
  for (auto& [severity, fault] : there) {
    faults.push_back(std::move(fault));
  }
  return faults;
}

bool names_restoring(record::SurfaceState state) {
  using record::SurfaceState;
  return state != SurfaceState::untouched && state != SurfaceState::cleaned &&
         state != SurfaceState::worn_through;
}

/// Only what is, or may be, the maker's can be restored; a knob of its life was always so.
bool perhaps_makers(const record::Piece& piece) {
  return piece.made_by.answer == record::MadeBy::this_maker ||
         piece.made_by.answer == record::MadeBy::not_determined ||
         piece.of_this_reel.answer == record::OfThisReel::yes;
}

bool later_finish(const record::Piece& piece, const record::Visit& visit, Moment moment) {
  using record::FinishBy;
  const FinishBy by = record::uppermost_finish(piece, visit, moment);
  return by != FinishBy::maker && by != FinishBy::not_determined;
}

std::vector<Restored> restored_in(const record::Record& record, const record::Visit& visit) {
  std::map<std::pair<record::PieceId, record::SurfaceState>, Restored> named;
  const auto name = [&](const record::PieceId& piece, record::SurfaceState state, Moment moment) {
    Restored& one = named[{piece, state}];
    one.piece = piece;
    one.state = state;
    (moment == Moment::found ? one.found : one.left) = true;
  };
  for (const record::PieceFinding& finding : visit.findings.pieces) {
    const record::Piece* piece = find(record, finding.piece);
    if (piece == nullptr || !perhaps_makers(*piece)) continue;
    for (const Moment moment : {Moment::found, Moment::left}) {
      const auto state = record::state_of(record, visit, finding.piece, moment);
      if (!state) continue;
      if (later_finish(*piece, visit, moment)) {
        name(finding.piece, record::SurfaceState::refinished, moment);
      }
      for (const record::SurfaceShare& share : state->surface) {
        if (names_restoring(share.state) && share.share.value > base::Decimal()) {
          name(finding.piece, share.state, moment);
        }
      }
    }
  }
  std::vector<Restored> restored;
  for (const record::Piece& one_piece : record.pieces) {  // in record order
    for (auto& [key, one] : named) {
      if (key.first == one_piece.id) restored.push_back(one);
    }
  }
  return restored;
}

std::vector<Empty> empty_in(const record::Record& record, const std::vector<Seat>& found,
                            const std::vector<Seat>& left) {
  std::vector<Empty> empty;
  for (const record::Place& place : record.places) {
    const auto count = [&](const std::vector<Seat>& seats) {
      return static_cast<int>(std::count_if(seats.begin(), seats.end(), [&](const Seat& seat) {
        return seat.place == &place && seat.filled == Seat::Filled::no;
      }));
    };
    const Empty one{place.id, count(found), count(left)};
    if (one.found > 0 || one.left > 0) empty.push_back(one);
  }
  return empty;
}

struct Ratings {
  std::optional<int> protection;
  std::optional<int> appearance;
};

/// ISO 10289: the appearance rating is never above the protection rating.
Ratings ratings_of(const std::optional<record::PieceState>& state,
                   const knowledge::CorrosionTable& table) {
  Ratings ratings;
  if (!state) return ratings;
  if (state->corroded) ratings.protection = knowledge::rating(table, *state->corroded);
  if (state->appearance_defects) {
    ratings.appearance = knowledge::rating(table, *state->appearance_defects);
    if (ratings.protection) ratings.appearance = std::min(*ratings.appearance, *ratings.protection);
  }
  return ratings;
}

std::vector<Corrosion> corrosion_in(const record::Record& record, const record::Visit& visit,
                                    const knowledge::CorrosionTable& table) {
  std::vector<Corrosion> rows;
  for (const record::PieceFinding& finding : visit.findings.pieces) {
    const Ratings found = ratings_of(finding.found, table);
    const Ratings left =
        ratings_of(record::state_of(record, visit, finding.piece, Moment::left), table);
    if (!found.protection && !found.appearance && !left.protection && !left.appearance) continue;
    rows.push_back(
        {finding.piece, found.protection, left.protection, found.appearance, left.appearance});
  }
  return rows;
}

}  // namespace

Finding assess(const record::Record& record, const record::Visit& visit,
               const knowledge::Knowledge& knowledge, const knowledge::PartsList* parts) {
  Finding finding;
  finding.visit = visit.id;
  finding.area_basis = area_basis(record, parts);
  const std::vector<Seat> found = seats_of(record, visit, Moment::found);
  const std::vector<Seat> left = seats_of(record, visit, Moment::left);
  const auto read = [&](const std::vector<Seat>& seats, Moment moment) {
    return Readings{read_surface({record, visit, moment}, seats, knowledge.condition,
                                 finding.area_basis, parts),
                    read_structure({record, visit, moment}),
                    read_working(visit.findings.tests, moment),
                    read_completeness(seats, knowledge.condition)};
  };
  finding.found = read(found, Moment::found);
  finding.left = read(left, Moment::left);
  finding.faults_found = faults_at(visit, Moment::found);
  finding.faults_left = faults_at(visit, Moment::left);
  for (const record::Fault& fault : visit.findings.faults) {
    if (record::put_right(fault)) finding.put_right.push_back(fault.id);
  }
  finding.restored = restored_in(record, visit);
  finding.empty = empty_in(record, found, left);
  finding.corrosion = corrosion_in(record, visit, knowledge.corrosion);
  return finding;
}

}  // namespace winchbook::assess::condition
