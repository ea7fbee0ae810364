#include "record/moments.h"

#include <doctest/doctest.h>

namespace winchbook::record {
namespace {

/// A spool found untouched, and nothing written of it as left.
Record spool_as_found() {
  Record record;
  Visit visit;
  visit.id = {"visit"};
  PieceFinding finding;
  finding.piece = {"spool"};
  finding.found = PieceState{};
  finding.found->presence = Presence::loose;
  finding.found->surface = {{SurfaceState::untouched, {base::Decimal(80, 0)}},
                            {SurfaceState::cleaned, {base::Decimal(20, 0)}}};
  visit.findings.pieces.push_back(finding);
  record.visits.push_back(visit);
  return record;
}

std::optional<PieceState> left(const Record& record) {
  return state_of(record, record.visits.back(), {"spool"}, Moment::left);
}

}  // namespace

TEST_CASE("what nobody graded as left is as it was found, changed by the acts entered") {
  Record record = spool_as_found();
  Visit& visit = record.visits.back();
  CHECK(state_entered(visit, {"spool"}, Moment::left) == nullptr);
  REQUIRE(left(record));
  CHECK(left(record)->surface.front().state == SurfaceState::untouched);
  CHECK(left(record)->presence == Presence::loose);

  Cleaning cleaning;
  cleaning.pieces = {{"spool"}};
  visit.cleaning.push_back(cleaning);
  visit.tray.emplace_back();
  visit.tray.back().piece = {"spool"};
  visit.tray.back().refitted = 1;
  REQUIRE(left(record)->surface.size() == 1);
  CHECK(left(record)->surface.front().state == SurfaceState::cleaned);
  CHECK(left(record)->surface.front().share.value == base::Decimal(100, 0));
  CHECK(left(record)->presence == Presence::fitted);

  Fitting fitting;
  fitting.piece = {"spool"};
  fitting.removed_in = VisitId{"visit"};
  record.fittings.push_back(fitting);
  CHECK_FALSE(left(record));
}

TEST_CASE("a fault stands as it was found until somebody wrote that it was put right") {
  Fault fault;
  fault.found = Severity::weakening;
  CHECK(severity_at(fault, Moment::left) == Severity::weakening);
  CHECK_FALSE(put_right(fault));
  fault.as_left = FaultLeft::blemish;
  CHECK(severity_at(fault, Moment::left) == Severity::blemish);
  CHECK(severity_at(fault, Moment::found) == Severity::weakening);
  fault.as_left = FaultLeft::put_right;
  CHECK_FALSE(severity_at(fault, Moment::left));
  CHECK(put_right(fault));
}

TEST_CASE("a piece is there when it is fitted or loose, or its surface was described") {
  PieceState state;
  CHECK_FALSE(is_there(state));
  state.surface = {{SurfaceState::untouched, {base::Decimal(100, 0)}}};
  CHECK(is_there(state));
  state.presence = Presence::missing;
  CHECK_FALSE(is_there(state));
}

}  // namespace winchbook::record
