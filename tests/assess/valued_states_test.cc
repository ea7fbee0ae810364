#include "assess/valued_states.h"

#include <doctest/doctest.h>

#include "assess/reel_on_bench.h"
#include "base/files.h"

namespace winchbook::assess {
namespace {

using value::Trait;

const knowledge::BoxWords& box_words() {
  static const knowledge::BoxWords words = [] {
    const auto prices = knowledge::load_prices({base::RealFiles(), WINCHBOOK_SOURCE_DIR});
    REQUIRE(prices);
    return prices->rules.box;
  }();
  return words;
}

/// A reel with one thing that came with it and is of it.
bench_test::ReelOnBench with_content(const std::string& name) {
  bench_test::ReelOnBench reel;
  record::Piece& piece = reel.piece("content");
  piece.name = name;
  piece.role = record::PieceRole::content;
  piece.now.kind = record::Whereabouts::Kind::with_reel;
  return reel;
}

bool is_box(const std::string& name) {
  return box_of(with_content(name).record, box_words()) != nullptr;
}

}  // namespace

TEST_CASE("a box is told by whole words of its name") {
  for (const char* name :
       {"Maker’s box", "Maker's Box", "Box", "Card box for a No. 4", "Box, card, with its label",
        "The carton it was sold in", "Leather case", "Tin, japanned", "Box of card",
        "Box of wood, dovetailed", "Box with papers", "Box and a tin of grease"}) {
    CAPTURE(name);
    CHECK(is_box(name));
  }
  for (const char* name :
       {"Foxed paper leaflet", "Oxidised spanner", "Grey flannel pouch", "Toolbox", "Tool box",
        "Boxwood handle", "Box spanner", "Box of flies", "Fly box", "Box of hooks", "Box lid",
        "Lid of the box", "Label of its box", "Tin of grease", "Oil tin", "Spare spool case",
        "Oxblood polish", ""}) {
    CAPTURE(name);
    CHECK_FALSE(is_box(name));
  }
}

TEST_CASE("a box counts when it is of this reel, came with it, and is still there") {
  auto reel = with_content("Maker's box");
  record::Piece& box = reel.record.pieces.back();
  CHECK(box_of(reel.record, box_words()) == &box);
  box.of_this_reel.answer = record::OfThisReel::no;
  CHECK(box_of(reel.record, box_words()) == nullptr);
  box.of_this_reel.answer = record::OfThisReel::not_determined;
  CHECK(box_of(reel.record, box_words()) == nullptr);
  box.of_this_reel.answer = record::OfThisReel::yes;
  box.role = record::PieceRole::part;
  CHECK(box_of(reel.record, box_words()) == nullptr);
  box.role = record::PieceRole::content;
  box.now.kind = record::Whereabouts::Kind::lost;
  CHECK(box_of(reel.record, box_words()) == nullptr);
}

TEST_CASE("a reel is valued as found and as left, with its box or without") {
  for (const auto& [name, box] : {std::pair("Maker's box", 0), std::pair("Foxed leaflet", 1)}) {
    const auto reel = with_content(name);
    const auto states =
        valued_states(reel.record, assess(reel.record, bench_test::shipped()), box_words());
    REQUIRE(states.size() == 2);
    CHECK(states[0].kind == ValuedState::Kind::found);
    CHECK(states[1].kind == ValuedState::Kind::left);
    CHECK(states[0].state[Trait::box] == box);
    CHECK(states[1].state[Trait::box] == box);
  }
}

TEST_CASE("ten points of originality lost are one step, and a wide range is not told") {
  bench_test::ReelOnBench reel;
  reel.place("spool", "90");
  reel.piece("spool");
  reel.sits("spool", "spool");
  reel.place("knob", "10");
  reel.bench_piece("knob");
  reel.sits("knob", "knob");
  const auto originality = [&] {
    const auto states =
        valued_states(reel.record, assess(reel.record, bench_test::shipped()), box_words());
    return states.back().state[Trait::originality];
  };
  CHECK(originality() == 1);
  reel.record.pieces.front().of_this_reel.answer = record::OfThisReel::not_determined;
  CHECK_FALSE(originality());
}

TEST_CASE("a reel that was never at the bench has no state to be valued") {
  auto reel = with_content("Maker's box");
  reel.record.visits.clear();
  CHECK(
      valued_states(reel.record, assess(reel.record, bench_test::shipped()), box_words()).empty());
}

}  // namespace winchbook::assess
