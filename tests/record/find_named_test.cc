#include "record/find_named.h"

#include <doctest/doctest.h>

#include "record/named_people.h"

namespace winchbook::record {
namespace {

record::Record reel() {
  record::Record record;
  const auto add = [&](const char* id, const char* name, int count) {
    record::Piece piece;
    piece.id = {id};
    piece.name = name;
    piece.count = count;
    record.pieces.push_back(piece);
  };
  add("handle-plate", "Handle-side plate", 1);
  add("handle-screws", "Handle-plate screws", 6);
  add("washers-soft", "Drag washers, soft", 3);
  add("washers-metal", "Drag washers, metal", 4);
  add("pinion-old", "Pinion", 1);
  add("pinion-new", "Pinion", 1);
  add("spool", "Spool", 1);
  record::Person nell;
  nell.id = {"nell"};
  nell.name = std::string("Nell Merrow");
  nell.short_name = "Nell";
  record.people.push_back(nell);
  return record;
}

std::string found(const char* said) {
  static const record::Record record = reel();
  const auto piece = find_piece(record, said);
  return piece ? piece.value()->id.text : piece.faults().front().message;
}

std::string hint(const char* said) {
  static const record::Record record = reel();
  const auto piece = find_piece(record, said);
  return piece ? "" : piece.faults().front().hint;
}

}  // namespace

TEST_CASE("an id, the beginning of one, a name, or words of it find a part") {
  CHECK(found("spool") == "spool");
  CHECK(found("sp") == "spool");
  CHECK(found("Handle plate") == "handle-plate");
  CHECK(found("washers-m") == "washers-metal");
  CHECK(found("drag soft") == "washers-soft");
  CHECK(found("plate screws") == "handle-screws");
}

TEST_CASE("a number takes the so-many-th of all that match") {
  CHECK(found("drag washer 2") == "washers-soft");
  CHECK(found("drag washer 4") == "washers-metal");
  CHECK(found("pinion 2") == "pinion-new");
  CHECK(found("drag washer 8") == "there is no part called \"drag washer 8\"");
}

TEST_CASE("what may be several things is told with all of them") {
  CHECK(found("pinion") == "\"pinion\" may be any of 2 parts");
  CHECK(hint("pinion") == "say which: pinion-old (Pinion), pinion-new (Pinion)");
  CHECK(found("bridge") == "there is no part called \"bridge\"");
}

TEST_CASE("a number behind a colon counts a part") {
  const record::Record record = reel();
  const auto counted = find_counted(record, {"plate screws: 4", "spool"});
  REQUIRE(counted);
  CHECK(counted->at(0).count == 4);
  CHECK(counted->at(1).count == 1);
  CHECK_FALSE(find_counted(record, {"spool: many"}));
}

TEST_CASE("people are named by reference wherever a sentence names them") {
  const record::Record record = reel();
  const auto stretches = record::name_people(record, "“Nell’s reel”, said Nell Merrow; not Nelly.");
  REQUIRE(stretches.size() == 5);
  CHECK(stretches[1].words == "Nell");
  CHECK(stretches[1].person.text == "nell");
  CHECK(stretches[3].words == "Nell Merrow");
  CHECK(stretches[4].words == "; not Nelly.");
}

}  // namespace winchbook::record
