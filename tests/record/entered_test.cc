#include "record/entered.h"

#include <doctest/doctest.h>

#include <utility>

#include "record/find_named.h"

namespace winchbook::record {
namespace {

Record with_places() {
  Record record;
  for (const auto& [id, name] : {std::pair{"pl-foot", "Foot"}, std::pair{"pl-spool", "Spool"},
                                 std::pair{"pl-click-spring", "Click spring"}}) {
    Place place;
    place.id = {id};
    place.name = name;
    record.places.push_back(place);
  }
  record.visits.emplace_back();
  return record;
}

}  // namespace

TEST_CASE("a place of the list is entered by a piece that was in it, or by a finding") {
  Record record = with_places();
  CHECK(places_not_entered(record).size() == 3);
  Fitting fitting;
  fitting.place = {"pl-foot"};
  fitting.until = base::EdtfDate::parse("1962").value();
  record.fittings.push_back(fitting);
  PlaceFinding finding;
  finding.place = {"pl-spool"};
  finding.found = Filled::empty;
  record.visits.back().findings.places.push_back(finding);
  REQUIRE(places_not_entered(record).size() == 1);
  CHECK(places_not_entered(record).front()->name == "Click spring");
  CHECK(places_without_piece(record).size() == 1);
  // Seen to be filled, it has a piece that nobody described yet.
  record.visits.back().findings.places.back().found = Filled::yes;
  CHECK(places_without_piece(record).size() == 2);
}

TEST_CASE("a part is found by its piece, or by the place of the list where it will sit") {
  Record record = with_places();
  const auto spring = find_part(record, "click");
  REQUIRE(spring);
  CHECK(spring->piece == nullptr);
  CHECK(spring->place->name == "Click spring");
  Piece piece;
  piece.id = {"click-button"};
  piece.name = "Click button";
  record.pieces.push_back(piece);
  CHECK_FALSE(find_part(record, "click"));
  CHECK(find_part(record, "click-button")->piece->name == "Click button");
}

}  // namespace winchbook::record
