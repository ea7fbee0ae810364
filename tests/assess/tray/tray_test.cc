#include "assess/tray/tray.h"

#include <doctest/doctest.h>

namespace winchbook::assess::tray {
namespace {

/// A reel with a spool and four screws, taken in once.
record::Record reel() {
  record::Record record;
  record::Visit visit;
  visit.id = {"v-1"};
  visit.taken_in = *base::EdtfDate::parse("2026-03-03");
  const auto add = [&](const char* id, const char* name, int count) {
    record::Place place;
    place.id = {std::string("pl-") + id};
    place.name = name;
    place.quantity = count;
    record::Piece piece;
    piece.id = {id};
    piece.name = name;
    piece.count = count;
    record::Fitting fitting;
    fitting.id = {std::string("fi-") + id};
    fitting.piece = piece.id;
    fitting.place = place.id;
    record.places.push_back(place);
    record.pieces.push_back(piece);
    record.fittings.push_back(fitting);
  };
  add("spool", "Spool", 1);
  add("screws", "Screws", 4);
  record.visits.push_back(visit);
  return record;
}

record::TrayLine line(const char* piece, int taken_off) {
  record::TrayLine one;
  one.piece = {piece};
  one.taken_off = taken_off;
  return one;
}

}  // namespace

TEST_CASE("four screws taken off, three refitted and one lost are all accounted for") {
  record::Record record = reel();
  record::TrayLine screws = line("screws", 4);
  screws.refitted = 3;
  screws.lost = 1;
  record.visits.front().tray = {screws};
  const Account closed = account(record, record.visits.front());
  REQUIRE(closed.pieces.size() == 1);
  CHECK(closed.pieces.front().name == "Screws");
  CHECK(closed.pieces.front().unaccounted() == 0);
  CHECK(closed.closed());
  CHECK(closed.places[1].sits == 3);
  CHECK(closed.places[1].filled() == Filled::in_part);

  record.visits.front().tray.front().lost = 0;
  const Account open = account(record, record.visits.front());
  CHECK(open.pieces.front().unaccounted() == 1);
  CHECK(open.pieces.front().open());
  CHECK_FALSE(open.closed());
}

TEST_CASE("what lay loose counts as having come, wherever it goes") {
  record::Record record = reel();
  record::TrayLine spool = line("spool", 0);
  spool.found_loose = 1;
  record.visits.front().tray = {spool};
  CHECK_FALSE(account(record, record.visits.front()).closed());
  for (int record::TrayLine::*way :
       {&record::TrayLine::refitted, &record::TrayLine::bagged, &record::TrayLine::to_owner,
        &record::TrayLine::kept_by_bench, &record::TrayLine::lost, &record::TrayLine::scrapped}) {
    record::TrayLine gone = spool;
    gone.*way = 1;
    record.visits.front().tray = {gone};
    CHECK(account(record, record.visits.front()).closed());
  }
}

TEST_CASE("more going than came is a fault of counting, not a closed tray") {
  record::Record record = reel();
  record::TrayLine spool = line("spool", 1);
  spool.refitted = 2;
  record.visits.front().tray = {spool};
  const Account wrong = account(record, record.visits.front());
  CHECK(wrong.pieces.front().unaccounted() == -1);
  CHECK_FALSE(wrong.pieces.front().open());
  CHECK_FALSE(wrong.closed());
}

TEST_CASE("a place is empty while its piece lies in the tray") {
  record::Record record = reel();
  CHECK(account(record, record.visits.front()).places[0].filled() == Filled::filled);
  record.visits.front().tray = {line("spool", 1)};
  CHECK(account(record, record.visits.front()).places[0].filled() == Filled::empty);
  record.visits.front().tray.front().refitted = 1;
  CHECK(account(record, record.visits.front()).places[0].filled() == Filled::filled);
}

TEST_CASE("a place whose piece was taken out for good is empty until another sits there") {
  record::Record record = reel();
  record.fittings.front().removed_in = record.visits.front().id;
  CHECK(account(record, record.visits.front()).places[0].filled() == Filled::empty);
}

TEST_CASE("what does not go back is told by the tray, and else by the piece itself") {
  record::Record record = reel();
  record::Visit& visit = record.visits.front();
  CHECK(stays_away(record, visit).empty());
  record::TrayLine screws = line("screws", 4);
  screws.lost = 1;
  screws.kept_by_bench = 2;
  visit.tray = {screws};
  const auto away = stays_away(record, visit);
  REQUIRE(away.size() == 2);
  CHECK(away[0].kind == record::Whereabouts::Kind::kept_by_bench);
  CHECK(away[0].count == 2);
  CHECK(away[1].kind == record::Whereabouts::Kind::lost);
  CHECK(away[1].count == 1);

  visit.tray.clear();
  record.pieces[1].now.kind = record::Whereabouts::Kind::scrapped;
  CHECK(stays_away(record, visit).empty());  // the visit did not find it
  record::PieceFinding finding;
  finding.piece = {"screws"};
  finding.found.emplace();
  finding.found->presence = record::Presence::fitted;
  visit.findings.pieces = {finding};
  REQUIRE(stays_away(record, visit).size() == 1);
  CHECK(stays_away(record, visit).front().count == 4);
  CHECK(stays_away(record, visit).front().piece == &record.pieces[1]);
}

}  // namespace winchbook::assess::tray
