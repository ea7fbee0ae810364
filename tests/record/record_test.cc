#include "record/record.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "record/enum_words.h"

using namespace winchbook;          // NOLINT
using namespace winchbook::record;  // NOLINT

namespace {

base::EdtfDate date(const std::string& text) {
  return *base::EdtfDate::parse(text);
}

Visit visit(const std::string& id, const std::string& in, const std::string& out) {
  Visit one;
  one.id = {id};
  one.taken_in = date(in);
  if (!out.empty()) one.hand_back = HandBack{date(out), {}, {}, {}};
  return one;
}

Fitting fitting(const std::string& piece) {
  Fitting one;
  one.id = {"fi-" + piece};
  one.piece = {piece};
  one.place = {"pinion"};
  return one;
}

/// A pinion of the maker's, another from 1962 to the visit of 2026, one of that visit, two visits
/// in all.
Record three_pinions() {
  Record record;
  record.places.push_back({});
  record.places.front().id = {"pinion"};
  record.visits = {visit("v1", "2014-05-02", "2014-06-01"),
                   visit("v2", "2026-03-03", "2026-06-19")};
  Fitting makers = fitting("makers");
  makers.by = ByMaker{};
  makers.until = date("1962-08");
  Fitting life = fitting("life");
  life.from = date("1962-08");
  life.until = date("2026-04-22");
  life.removed_in = VisitId{"v2"};
  Fitting bench = fitting("bench");
  bench.from = date("2026-04-22");
  bench.by = ByBench{};
  bench.visit = VisitId{"v2"};
  record.fittings = {makers, life, bench};
  return record;
}

std::vector<std::string> pieces_in(const Record& record, std::size_t number, Moment moment) {
  std::vector<std::string> pieces;
  for (const Fitting* one : fittings_in(record, {"pinion"}, record.visits.at(number), moment)) {
    pieces.push_back(one->piece.text);
  }
  return pieces;
}

using Pieces = std::vector<std::string>;

}  // namespace

TEST_CASE("a place holds what the visit found and what it left") {
  const Record record = three_pinions();
  CHECK(pieces_in(record, 0, Moment::found) == Pieces{"life"});
  CHECK(pieces_in(record, 0, Moment::left) == Pieces{"life"});
  CHECK(pieces_in(record, 1, Moment::found) == Pieces{"life"});
  CHECK(pieces_in(record, 1, Moment::left) == Pieces{"bench"});
}

TEST_CASE("the visit tells when the dates are left out") {
  Record record = three_pinions();
  record.fittings[1].until.reset();
  record.fittings[2].from.reset();
  CHECK(pieces_in(record, 0, Moment::left) == Pieces{"life"});
  CHECK(pieces_in(record, 1, Moment::found) == Pieces{"life"});
  CHECK(pieces_in(record, 1, Moment::left) == Pieces{"bench"});
}

TEST_CASE("the dates tell when the visit is left out") {
  Record record = three_pinions();
  record.fittings[1].removed_in.reset();
  record.fittings[2].visit.reset();
  CHECK(pieces_in(record, 0, Moment::left) == Pieces{"life"});
  CHECK(pieces_in(record, 1, Moment::found) == Pieces{"life"});
  CHECK(pieces_in(record, 1, Moment::left) == Pieces{"bench"});
}

TEST_CASE("a reel still at the bench has what was fitted so far") {
  Record record = three_pinions();
  record.visits[1].hand_back.reset();
  CHECK(pieces_in(record, 1, Moment::found) == Pieces{"life"});
  CHECK(pieces_in(record, 1, Moment::left) == Pieces{"bench"});
}

TEST_CASE("a piece fitted in an earlier visit is found in the next") {
  Record record = three_pinions();
  record.fittings[1].until = date("2014-05-20");
  record.fittings[1].removed_in = VisitId{"v1"};
  record.fittings[2].from = date("2014-05-20");
  record.fittings[2].visit = VisitId{"v1"};
  CHECK(pieces_in(record, 0, Moment::found) == Pieces{"life"});
  CHECK(pieces_in(record, 0, Moment::left) == Pieces{"bench"});
  CHECK(pieces_in(record, 1, Moment::found) == Pieces{"bench"});
  CHECK(pieces_in(record, 1, Moment::left) == Pieces{"bench"});
}

TEST_CASE("words are told with the names a reader may see") {
  Record record;
  Person gus;
  gus.id = {"gus"};
  gus.name = std::string("Augusta Merrow");
  gus.stand_in = "the first owner";
  record.people.push_back(gus);
  Piece knob;
  knob.id = {"knob"};
  knob.name = "Knob";
  record.pieces.push_back(knob);
  const Words words{{PersonMention{{"gus"}, "Gus"}, Plain{" turned "}, PieceMention{{"knob"}, ""},
                     PhotoMention{{"ph"}}, Plain{" of "}, Emphasis{"teak"}, Plain{"; "},
                     PersonMention{{"gus"}, ""}}};
  CHECK(plain_text(record, words) == "Gus turned Knob of teak; Augusta Merrow");
  record.people.front().name = Withheld{std::string(64, '0')};
  CHECK(plain_text(record, words) == "the first owner turned Knob of teak; the first owner");
}

TEST_CASE("things are found by their ids, and what is not there is not found") {
  const Record record = three_pinions();
  CHECK(find(record, FittingId{"fi-life"})->piece.text == "life");
  CHECK(find(record, FittingId{"life"}) == nullptr);
  CHECK(find(record, PlaceId{"pinion"}) != nullptr);
  CHECK(last_visit(record)->id.text == "v2");
  CHECK(last_visit(Record{}) == nullptr);
}

TEST_CASE("a closed list gives the word of a value and the value of a word") {
  CHECK(word_of(SurfaceState::worn_through) == "worn-through");
  CHECK(value_of<SurfaceState>("worn-through") == SurfaceState::worn_through);
  CHECK_FALSE(value_of<SurfaceState>("worn through"));
  CHECK(word_of(SaleKind::private_sale) == "private");
}
