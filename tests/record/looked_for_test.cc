#include "record/looked_for.h"

#include <doctest/doctest.h>

namespace winchbook::record {
namespace {

Record with_a_visit() {
  Record record;
  Visit visit;
  visit.id = {"visit"};
  record.visits.push_back(visit);
  return record;
}

std::optional<Looked> faults_in(const Record& record) {
  return looked_for(record, record.visits.back(), LookedFor::faults);
}

}  // namespace

TEST_CASE("looked and found none, did not look, and found some are three") {
  Record record = with_a_visit();
  CHECK_FALSE(faults_in(record));
  Findings& findings = record.visits.back().findings;
  findings.looked_for.push_back({LookedFor::faults, {}, {}, Looked::none});
  CHECK(faults_in(record) == Looked::none);
  Fault crack;
  crack.name = "crack";
  findings.faults.push_back(crack);
  CHECK(faults_in(record) == Looked::some);
  CHECK(entered(record, record.visits.back(), LookedFor::faults) == "crack");
  findings.looked_for.clear();
  CHECK(faults_in(record) == Looked::some);
}

TEST_CASE("marks are the reel's, and count for its last visit") {
  Record record = with_a_visit();
  record.visits.push_back(record.visits.front());
  record.visits.back().id = {"later"};
  Marking mark;
  mark.id = {"mk-1"};
  record.markings.push_back(mark);
  CHECK_FALSE(looked_for(record, record.visits.front(), LookedFor::marks));
  CHECK(looked_for(record, record.visits.back(), LookedFor::marks) == Looked::some);
}

TEST_CASE("what lay loose, what was parted with and what came with it are found where they stand") {
  Record record = with_a_visit();
  Visit& visit = record.visits.back();
  Piece line;
  line.id = {"line"};
  line.name = "Line";
  line.role = PieceRole::content;
  record.pieces.push_back(line);
  CHECK(entered(record, visit, LookedFor::contents) == "Line");
  CHECK(entered(record, visit, LookedFor::loose_parts).empty());
  visit.tray.emplace_back();
  visit.tray.back().piece = {"line"};
  visit.tray.back().found_loose = 1;
  CHECK(entered(record, visit, LookedFor::loose_parts) == "Line");
  CHECK(entered(record, visit, LookedFor::parted).empty());
  visit.tray.back().lost = 1;
  CHECK(entered(record, visit, LookedFor::parted) == "Line");
}

}  // namespace winchbook::record
