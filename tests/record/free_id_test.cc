#include "record/free_id.h"

#include <doctest/doctest.h>

using namespace winchbook::record;  // NOLINT

TEST_CASE("a free id is like the wish, and like no other id of the record") {
  Record record;
  CHECK(free_id(record, "Tail plate!") == "tail-plate");
  CHECK(free_id(record, "6 screws") == "x-6-screws");
  CHECK(free_id(record, "é") == "x-");
  CHECK(free_id(record, std::string(80, 'a')).size() == 56);
  record.places.emplace_back().id.text = "tail-plate";
  record.visits.emplace_back().findings.faults.emplace_back().id.text = "tail-plate-2";
  CHECK(free_id(record, "tail plate") == "tail-plate-3");
}

TEST_CASE("an id anywhere in the record is taken") {
  Record record;
  record.people.emplace_back().id.text = "person";
  record.custody.emplace_back(CustodyGap{{"gap"}, {}, {}, {}});
  record.life.emplace_back().id.text = "event";
  record.donors.emplace_back().id.text = "donor";
  record.pieces.emplace_back().id.text = "piece";
  record.fittings.emplace_back().id.text = "fitting";
  record.markings.emplace_back().id.text = "mark";
  record.photos.emplace_back().id.text = "photo";
  record.value.emplace().sales.emplace_back().id.text = "sale";
  Visit& visit = record.visits.emplace_back();
  visit.id.text = "visit";
  visit.agreements.emplace_back().id.text = "agreement";
  visit.strip_down.emplace_back().id.text = "step";
  for (const char* id : {"person", "gap", "event", "donor", "piece", "fitting", "mark", "photo",
                         "sale", "visit", "agreement", "step"}) {
    CAPTURE(id);
    CHECK(has_id(record, id));
  }
  CHECK_FALSE(has_id(record, "place"));
}
