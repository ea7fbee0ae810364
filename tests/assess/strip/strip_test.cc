#include "assess/strip/strip.h"

#include <doctest/doctest.h>

#include <algorithm>

namespace winchbook::assess::strip {
namespace {

/// A bridge that holds the dog spring down, the spring in two loose pieces, and a gear.
knowledge::PartsList list() {
  knowledge::PartsList parts;
  parts.reel_kind = "multiplier";
  const auto add = [&](const char* word, const char* name) {
    knowledge::PartsEntry entry;
    entry.word = word;
    entry.name = name;
    entry.assembly = "gears";
    parts.places.push_back(entry);
    return &parts.places.back();
  };
  add("bridge", "Bridge");
  add("main-gear", "Main gear")->lubricant = knowledge::Lubricant::grease;
  auto* spring = add("dog-spring", "Dog spring");
  spring->captive_spring = true;
  spring->freed_by = "bridge";
  spring->loose_pieces = 2;
  add("lubricant", "Oil and grease");
  return parts;
}

record::Record reel() {
  record::Record record;
  record::Visit visit;
  visit.id = {"v-1"};
  visit.taken_in = *base::EdtfDate::parse("2026-03-03");
  for (const auto& [kind, name] :
       {std::pair{"bridge", "Bridge"}, {"main-gear", "Main gear"}, {"dog-spring", "Dog spring"}}) {
    record::Place place;
    place.id = {std::string("pl-") + kind};
    place.kind = kind;
    place.name = name;
    record::Piece piece;
    piece.id = {kind};
    piece.name = name;
    piece.now.kind = record::Whereabouts::Kind::fitted;
    record::Fitting fitting;
    fitting.id = {std::string("fi-") + kind};
    fitting.piece = piece.id;
    fitting.place = place.id;
    record.places.push_back(place);
    record.pieces.push_back(piece);
    record.fittings.push_back(fitting);
  }
  record.visits.push_back(visit);
  return record;
}

void add_step(record::Record& record, const std::vector<record::PieceId>& pieces) {
  record::StripStep step;
  step.number = static_cast<int>(record.visits.back().strip_down.size()) + 1;
  step.pieces = pieces;
  record.visits.back().strip_down.push_back(step);
}

Finding strip_of(const record::Record& record) {
  static const knowledge::PartsList kList = list();
  return strip(record, record.visits.back(), &kList);
}

}  // namespace

TEST_CASE("a spring is warned of where its hold goes, though the step says nothing") {
  record::Record record = reel();
  add_step(record, {{"bridge"}});
  add_step(record, {{"dog-spring"}});
  const Finding finding = strip_of(record);
  REQUIRE(finding.steps.size() == 2);
  REQUIRE(finding.steps[0].springs.size() == 1);
  const Spring& flies = finding.steps[0].springs.front();
  CHECK(flies.name == "Dog spring");
  CHECK(flies.frees == Spring::Frees::loses_its_hold);
  CHECK(flies.held_by == "Bridge");
  CHECK(flies.loose_pieces == 2);
  REQUIRE(finding.steps[1].springs.size() == 1);
  CHECK(finding.steps[1].springs.front().frees == Spring::Frees::comes_off);
}

TEST_CASE("a spring that loses its hold and then comes off is one spring") {
  record::Record record = reel();
  record.pieces[0].count = 2;
  add_step(record, {{"bridge"}});
  add_step(record, {{"dog-spring"}});
  CHECK(springs_named(strip_of(record)) == 1);
  CHECK(pieces_off(strip_of(record)) == 3);
  CHECK(springs_named(strip_of(reel())) == 1);
  CHECK(pieces_off(strip_of(reel())) == 0);
}

TEST_CASE("a spring that is off already does not fly again") {
  record::Record record = reel();
  add_step(record, {{"dog-spring"}});
  add_step(record, {{"bridge"}});
  const Finding finding = strip_of(record);
  CHECK(finding.steps[0].springs.size() == 1);
  CHECK(finding.steps[1].springs.empty());
}

TEST_CASE("without a parts list only the record's own word makes a spring") {
  record::Record record = reel();
  add_step(record, {{"dog-spring"}});
  CHECK(strip(record, record.visits.back(), nullptr).steps[0].springs.empty());
  record.places[2].captive_spring = true;
  CHECK(strip(record, record.visits.back(), nullptr).steps[0].springs.size() == 1);
}

TEST_CASE("what was fitted instead goes back, and what is bagged stays out") {
  record::Record record = reel();
  record::Piece fresh = record.pieces[1];
  fresh.id = {"gear-new"};
  fresh.name = "Main gear of a donor";
  record.pieces.push_back(fresh);
  record.pieces[1].now.kind = record::Whereabouts::Kind::bagged;
  record::Fitting fitting;
  fitting.id = {"fi-new"};
  fitting.piece = {"gear-new"};
  fitting.place = {"pl-main-gear"};
  fitting.visit = record::VisitId{"v-1"};
  fitting.instead_of = record::PieceId{"main-gear"};
  record.fittings.push_back(fitting);
  record.pieces[2].now.kind = record::Whereabouts::Kind::lost;
  add_step(record, {{"main-gear"}, {"dog-spring"}});
  const Finding finding = strip_of(record);
  REQUIRE(finding.steps[0].back.size() == 1);
  CHECK(finding.steps[0].back.front().name == "Main gear of a donor");
  CHECK(finding.steps[0].back.front().lubricant == knowledge::Lubricant::grease);
  CHECK(finding.put_in.empty());
  REQUIRE(stays_out(finding.steps[0]).size() == finding.steps[0].off.size());
  CHECK(stays_out(finding.steps[0]).front().piece.text == "main-gear");
}

TEST_CASE("what no step took off is told, and the springs left under load in it") {
  record::Record record = reel();
  add_step(record, {{"main-gear"}});
  const Finding finding = strip_of(record);
  REQUIRE(finding.not_apart.size() == 2);
  CHECK(finding.not_apart[0].name == "Bridge");
  REQUIRE(finding.left_loaded.size() == 1);
  CHECK(finding.left_loaded.front().loose_pieces == 2);
}

TEST_CASE("without steps every place of record and parts list is a row, none of them grease") {
  record::Record record = reel();
  record.places.erase(record.places.begin());  // the list still knows the bridge
  const Finding finding = strip_of(record);
  CHECK(finding.steps.empty());
  REQUIRE(finding.places.size() == 3);
  const auto spring =
      std::find_if(finding.places.begin(), finding.places.end(),
                   [](const PlaceToStrip& place) { return place.name == "Dog spring"; });
  REQUIRE(spring != finding.places.end());
  CHECK(spring->captive_spring);
  CHECK(spring->held_by == "Bridge");
}

}  // namespace winchbook::assess::strip
