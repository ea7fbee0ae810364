#include "assess/originality/originality.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "assess/reel_on_bench.h"

namespace winchbook::assess::originality {
namespace {

using base::Ratio;
using base::RatioRange;
using bench_test::ReelOnBench;
using record::SurfaceState;

Finding assess(const record::Record& record, std::size_t visit) {
  return originality::assess(record, record.visits[visit], bench_test::shipped().originality,
                             knowledge::parts_list(bench_test::shipped(), "multiplier"));
}
Finding assess(const ReelOnBench& reel) {
  return assess(reel.record, reel.record.visits.size() - 1);
}

RatioRange share(int low, int high) {
  return {Ratio(low, 100), Ratio(high, 100)};
}

/// Ten places of weight 10, each with a piece "p0" … "p9" of the maker's.
ReelOnBench ten_places() {
  ReelOnBench reel;
  for (int i = 0; i < 10; ++i) {
    const std::string n = "p" + std::to_string(i);
    reel.place("at-" + n, "10");
    reel.piece(n);
    reel.sits(n, "at-" + n);
  }
  return reel;
}

bool has(const PieceRow& row, Reason reason) {
  const auto in = [&](const std::vector<Reason>& reasons) {
    return std::find(reasons.begin(), reasons.end(), reason) != reasons.end();
  };
  return in(row.reasons) || in(row.found.reasons) || in(row.left.reasons);
}

const PieceRow& row_at(const Finding& finding, const std::string& place) {
  return *std::find_if(finding.rows.begin(), finding.rows.end(),
                       [&](const PieceRow& row) { return row.place.text == place; });
}

}  // namespace

TEST_CASE("a reel of the maker's own pieces is original to the full") {
  const Finding finding = assess(ten_places());
  CHECK(*finding.original.found == share(100, 100));
  CHECK(*finding.original.left == share(100, 100));
  CHECK(finding.original_change.shares.empty());
  CHECK(finding.found.original == 10);
  CHECK(finding.found.places_for == 10);
}

TEST_CASE("each answer to \"original\" counts as it should") {
  for (const auto& [answer, low, high, standing, reason] :
       {std::tuple{record::OfThisReel::yes, 100, 100, Standing::original,
                   Reason::record_of_this_reel},
        std::tuple{record::OfThisReel::no, 90, 90, Standing::same_maker,
                   Reason::record_not_of_this_reel},
        std::tuple{record::OfThisReel::not_determined, 90, 100, Standing::not_determined,
                   Reason::original_not_determined}}) {
    ReelOnBench reel = ten_places();
    reel.record.pieces[3].of_this_reel.answer = answer;
    const Finding finding = assess(reel);
    CHECK(*finding.original.found == share(low, high));
    CHECK(finding.rows[3].found.standing == standing);
    CHECK(has(finding.rows[3], reason));
  }
}

TEST_CASE("who made a piece that is not original decides what it is called") {
  using record::MadeBy;
  for (const auto& [made_by, pattern, standing] :
       {std::tuple{MadeBy::this_maker, record::Pattern::right, Standing::same_maker},
        std::tuple{MadeBy::this_maker, record::Pattern::service_spare, Standing::service_spare},
        std::tuple{MadeBy::another, record::Pattern::wrong, Standing::another_maker},
        std::tuple{MadeBy::bench, record::Pattern::right, Standing::bench},
        std::tuple{MadeBy::owner, record::Pattern::wrong, Standing::life},
        std::tuple{MadeBy::not_determined, record::Pattern::wrong, Standing::another_maker}}) {
    ReelOnBench reel = ten_places();
    reel.record.pieces[0].of_this_reel.answer = record::OfThisReel::no;
    reel.record.pieces[0].made_by.answer = made_by;
    reel.record.pieces[0].pattern.answer = pattern;
    CHECK(assess(reel).rows[0].found.standing == standing);
  }
}

TEST_CASE("a piece of its life is neither the maker's nor the bench's") {
  ReelOnBench reel = ten_places();
  reel.record.pieces[9].of_this_reel.answer = record::OfThisReel::no;
  reel.record.pieces[9].made_by.answer = record::MadeBy::another;
  CHECK(assess(reel).rows[9].found.standing == Standing::another_maker);

  record::LifeEvent event;
  event.pieces = {{"p9"}};
  reel.record.life.push_back(event);
  const Finding finding = assess(reel);
  CHECK(finding.rows[9].found.standing == Standing::life);
  CHECK(finding.found.life == 1);
  CHECK(finding.found.other == 0);
  CHECK(*finding.original.found == share(90, 90));
  CHECK(finding.second_ledger.empty());
}

TEST_CASE("what the bench made or took from a donor is not original, whatever is written") {
  ReelOnBench reel = ten_places();
  reel.bench_piece("fresh").of_this_reel.answer = record::OfThisReel::yes;
  reel.donor_piece("given", "donor").of_this_reel.answer = record::OfThisReel::yes;
  reel.fit("fresh", "at-p0", "p0");
  reel.fit("given", "at-p1", "p1");
  const Finding finding = assess(reel);
  CHECK(*finding.original.left == share(80, 80));
  CHECK(has(finding.rows[0], Reason::made_at_bench));
  CHECK(has(finding.rows[1], Reason::from_donor));
}

TEST_CASE("a piece left open that the bench brought is not counted as original") {
  ReelOnBench reel = ten_places();
  reel.piece("stray").of_this_reel.answer = record::OfThisReel::not_determined;
  reel.fit("stray", "at-p0", "p0");
  CHECK(*assess(reel).original.left == share(90, 90));
  CHECK(has(assess(reel).rows[0], Reason::brought_by_bench));

  // It had come with the reel, loose: then it may be the reel's.
  reel.seen("stray", {}, {}).found->presence = record::Presence::loose;
  CHECK(*assess(reel).original.left == share(90, 100));
}

TEST_CASE("places are weighed by the record, else by the parts list, else alike") {
  ReelOnBench reel = ten_places();
  reel.record.pieces[0].of_this_reel.answer = record::OfThisReel::no;
  reel.record.places[0].weight = bench_test::decimal("110");
  CHECK(*assess(reel).original.found == share(45, 45));  // 90 of 200
  CHECK(has(assess(reel).rows[0], Reason::weight_of_record));

  ReelOnBench listed;
  listed.place("screws", "1", 4).weight.reset();
  listed.record.places[0].kind = "plate-screw";  // eight of them weigh 2
  listed.place("knob", "1").weight.reset();
  listed.record.places[1].kind = "knob";         // 3.5
  listed.place("other", "1", 3).weight.reset();  // half a share a piece
  for (const record::Place& place : listed.record.places) {
    listed.visit().findings.places.push_back(
        {place.id, {}, record::Filled::yes, record::Filled::yes, {}});
  }
  const Finding finding = assess(listed);
  CHECK(row_at(finding, "screws").weight == Ratio(1, 6));
  CHECK(row_at(finding, "knob").weight == Ratio(7, 12));
  CHECK(row_at(finding, "other").weight == Ratio(1, 4));
  CHECK(has(row_at(finding, "screws"), Reason::weight_of_parts_list));
  CHECK(has(row_at(finding, "other"), Reason::weight_of_unknown_place));
}

TEST_CASE("consumables weigh nothing") {
  ReelOnBench reel = ten_places();
  reel.bench_piece("washers");
  reel.fit("washers", "at-p4", "p4");
  CHECK(*assess(reel).original.left == share(90, 90));
  reel.record.places[4].consumable = true;
  const Finding finding = assess(reel);
  CHECK(*finding.original.left == share(100, 100));
  CHECK_FALSE(finding.rows[4].weighed);
  CHECK(finding.rows[4].letter == "A");

  reel.record.places[4].consumable = false;
  reel.record.places[4].kind = "drag-washer";  // consumable by the parts list
  CHECK(*assess(reel).original.left == share(100, 100));
}

TEST_CASE("each of several pieces in a place bears its part of the weight") {
  ReelOnBench reel;
  reel.place("pillars", "9", 3);
  reel.place("foot", "1");
  reel.piece("two", 2);
  reel.sits("two", "pillars");
  reel.bench_piece("third");
  reel.sits("third", "pillars");
  reel.piece("foot");
  reel.sits("foot", "foot");
  const Finding finding = assess(reel);
  CHECK(*finding.original.found == share(70, 70));
  REQUIRE(finding.rows.size() == 3);
  CHECK(finding.rows[0].name == "piece two");
  CHECK(finding.rows[0].seats == 2);
  CHECK(finding.rows[0].weight == Ratio(6, 10));
  CHECK(finding.rows[1].name == "piece third");
  CHECK(finding.rows[2].name == "the foot");
}

TEST_CASE("an empty place counts nothing; one that nobody looked into is open") {
  using record::Filled;
  for (const auto& [found, high, standing] :
       {std::tuple{Filled::empty, 90, Standing::missing},
        std::tuple{Filled::not_examined, 100, Standing::not_determined},
        std::tuple{Filled::yes, 100, Standing::not_determined},
        std::tuple{Filled::in_part, 100, Standing::not_determined}}) {
    ReelOnBench reel = ten_places();
    reel.record.fittings.pop_back();
    reel.visit().findings.places.push_back({{"at-p9"}, {}, found, found, {}});
    const Finding finding = assess(reel);
    CHECK(*finding.original.found == share(90, high));
    CHECK(finding.rows[9].found.standing == standing);
  }
  // A piece that was looked for and is not there.
  ReelOnBench reel = ten_places();
  reel.seen("p9", {}, {});
  reel.visit().findings.pieces[0].found->presence = record::Presence::missing;
  reel.visit().findings.pieces[0].left->presence = record::Presence::missing;
  CHECK(*assess(reel).original.found == share(90, 90));
  CHECK(assess(reel).found.missing == 1);
}

TEST_CASE(
    "a place that the maker may have left empty weighs nothing until a piece of his was there") {
  ReelOnBench reel = ten_places();
  reel.place("harness-lug", "10").may_be_empty = true;
  CHECK(assess(reel).rows.size() == 10);  // listed, and nothing entered of it
  reel.visit().findings.places.push_back(
      {{"harness-lug"}, {}, record::Filled::empty, record::Filled::empty, {}});
  CHECK(*assess(reel).original.found == share(100, 100));
  CHECK(assess(reel).rows[10].found.standing == Standing::left_empty);
  CHECK(assess(reel).found.places_for == 10);

  reel.bench_piece("lug");
  reel.fit("lug", "harness-lug");
  CHECK(*assess(reel).original.left == share(100, 100));

  reel.piece("own-lug");
  reel.sits("own-lug", "harness-lug").removed_in = reel.visit().id;
  CHECK(*assess(reel).original.found == share(100, 100));
  CHECK(assess(reel).original.left->high == Ratio(100, 110));
}

TEST_CASE("a reel that comes in pieces is what its pieces are") {
  ReelOnBench reel = ten_places();
  for (record::Fitting& fitting : reel.record.fittings) {
    fitting.by = record::ByBench{};
    fitting.visit = reel.visit().id;
    reel.seen(fitting.piece.text, {}, {}).found->presence = record::Presence::loose;
  }
  const Finding finding = assess(reel);
  CHECK(*finding.original.found == share(100, 100));
  CHECK(*finding.original.left == share(100, 100));
  CHECK(*finding.right_for_model.found == share(100, 100));
  CHECK(has(finding.rows[0], Reason::came_loose));
  CHECK_FALSE(finding.rows[0].changed);
  CHECK(finding.second_ledger.empty());
  CHECK(finding.loose_not_refitted.empty());
}

TEST_CASE("the maker's piece found loose and put back counts as found, though another sat there") {
  ReelOnBench reel = ten_places();
  reel.record.pieces[0].of_this_reel.answer = record::OfThisReel::no;
  reel.record.pieces[0].made_by.answer = record::MadeBy::another;
  reel.record.pieces[0].pattern.answer = record::Pattern::wrong;
  reel.piece("own");
  reel.seen("own", {}, {}).found->presence = record::Presence::loose;
  CHECK(assess(reel).loose_not_refitted == std::vector<record::PieceId>{{"own"}});
  CHECK(*assess(reel).original.found == share(90, 90));

  reel.fit("own", "at-p0", "p0");
  const Finding finding = assess(reel);
  CHECK(*finding.original.found == share(100, 100));
  CHECK(*finding.original.left == share(100, 100));
  CHECK(*finding.right_for_model.found == share(90, 90));
  CHECK(*finding.right_for_model.left == share(100, 100));
  CHECK(finding.rows[0].found.standing == Standing::another_maker);
  CHECK(finding.rows[0].left.standing == Standing::original);
}

TEST_CASE("the second ledger is lettered in the record's order of fittings") {
  ReelOnBench reel = ten_places();
  for (const int i : {7, 2, 5}) {
    const std::string n = std::to_string(i);
    reel.bench_piece("new" + n);
    reel.fit("new" + n, "at-p" + n, "p" + n);
  }
  const Finding finding = assess(reel);
  CHECK(finding.rows[7].letter == "A");
  CHECK(finding.rows[2].letter == "B");
  CHECK(finding.rows[5].letter == "C");
  CHECK_FALSE(finding.rows[0].letter);
  CHECK(finding.rows[7].changed);
  REQUIRE(finding.second_ledger.size() == 3);
  CHECK(find(reel.record, finding.second_ledger[1].fitting)->place.text == "at-p2");
}

TEST_CASE("letters go on after Z") {
  ReelOnBench reel;
  reel.place("rivets", "1", 60);
  for (int i = 0; i < 55; ++i) {
    const std::string n = "r" + std::to_string(i);
    reel.bench_piece(n);
    reel.fit(n, "rivets");
  }
  const auto ledger = second_ledger(reel.record, reel.visit());
  CHECK(ledger[25].letter == "Z");
  CHECK(ledger[26].letter == "AA");
  CHECK(ledger[51].letter == "AZ");
  CHECK(ledger[52].letter == "BA");
}

TEST_CASE("each answer about the pattern counts as it should, and the bench may raise it") {
  for (const auto& [pattern, low, high] : {std::tuple{record::Pattern::right, 100, 100},
                                           std::tuple{record::Pattern::running_change, 100, 100},
                                           std::tuple{record::Pattern::service_spare, 98, 98},
                                           std::tuple{record::Pattern::wrong, 90, 90},
                                           std::tuple{record::Pattern::not_determined, 90, 100}}) {
    ReelOnBench reel = ten_places();
    reel.record.pieces[0].pattern.answer = pattern;
    reel.bench_piece("right");
    reel.fit("right", "at-p0", "p0");
    const Finding finding = assess(reel);
    CHECK(*finding.right_for_model.found == share(low, high));
    CHECK(*finding.right_for_model.left == share(100, 100));
  }
}

TEST_CASE("earlier visits are told as they were") {
  ReelOnBench reel = ten_places();
  reel.visit().id = {"first"};
  reel.visit().taken_in = bench_test::date("2014-04-01");
  reel.visit().hand_back->on = bench_test::date("2014-05-01");
  reel.bench_piece("cork");
  reel.fit("cork", "at-p0", "p0");
  record::Visit second;
  second.id = {"second"};
  second.taken_in = bench_test::date("2026-03-03");
  reel.record.visits.push_back(second);
  reel.bench_piece("pinion");
  reel.fit("pinion", "at-p1", "p1");

  const Finding first = assess(reel.record, 0);
  CHECK(*first.original.found == share(100, 100));
  CHECK(*first.original.left == share(90, 90));
  const Finding last = assess(reel.record, 1);
  CHECK(*last.original.found == share(90, 90));
  CHECK(*last.original.left == share(80, 80));
  CHECK_FALSE(last.rows[0].letter);  // the first visit's fitting is not this ledger's
  CHECK(last.rows[1].letter == "A");
}

TEST_CASE("a record without anything to weigh has no index") {
  ReelOnBench reel;
  CHECK_FALSE(assess(reel).original.found);
  CHECK_FALSE(assess(reel).untouched_surface.left);
  reel.place("line", "5").consumable = true;
  CHECK_FALSE(assess(reel).original.found);
}

// ---- surfaces
// -------------------------------------------------------------------------------------

TEST_CASE("each state of a surface keeps its credit") {
  for (const auto& [what, kept] :
       {std::pair{SurfaceState::untouched, 100}, std::pair{SurfaceState::cleaned, 100},
        std::pair{SurfaceState::worn_through, 60}, std::pair{SurfaceState::polished, 30},
        std::pair{SurfaceState::stripped, 10}, std::pair{SurfaceState::repaired, 40},
        std::pair{SurfaceState::refinished, 0}, std::pair{SurfaceState::darkened_on_purpose, 20}}) {
    ReelOnBench reel;
    reel.place("plate", "1");
    reel.piece("plate");
    reel.sits("plate", "plate");
    reel.seen("plate", {{SurfaceState::untouched, 100}}, {{what, 100}});
    const Finding finding = assess(reel);
    CHECK(*finding.untouched_surface.found == share(100, 100));
    CHECK(*finding.untouched_surface.left == share(kept, kept));
  }
}

TEST_CASE("shares of a surface are weighed, and what they leave is open") {
  ReelOnBench reel;
  reel.place("plate", "1");
  reel.piece("plate");
  reel.sits("plate", "plate");
  const bench_test::Surface mixed{{SurfaceState::untouched, 50}, {SurfaceState::polished, 30}};
  reel.seen("plate", mixed, mixed);
  const Finding finding = assess(reel);
  CHECK(*finding.untouched_surface.found == share(59, 79));
  CHECK(has(finding.rows[0], Reason::surface_not_examined));

  reel.visit().findings.pieces.clear();
  CHECK(*assess(reel).untouched_surface.found == share(0, 100));
}

TEST_CASE("washing lowers nothing, unless a loss was seen") {
  ReelOnBench reel;
  reel.place("plate", "1");
  reel.piece("plate");
  reel.sits("plate", "plate");
  reel.seen("plate", {{SurfaceState::untouched, 100}}, {{SurfaceState::cleaned, 100}});
  record::Cleaning cleaning;
  cleaning.pieces = {{"plate"}};
  reel.visit().cleaning.push_back(cleaning);
  CHECK(*assess(reel).untouched_surface.left == share(100, 100));
  reel.visit().cleaning[0].loss = bench_test::words("a flake of nickel by the rim");
  const Finding finding = assess(reel);
  CHECK(*finding.untouched_surface.left == share(80, 80));
  CHECK(has(finding.rows[0], Reason::loss_measured));
  // The loss stays with it at the next visit.
  record::Visit next;
  next.id = {"next"};
  next.taken_in = bench_test::date("2030-01-01");
  next.findings.pieces = {{{"plate"},
                           bench_test::state({{SurfaceState::cleaned, 100}}),
                           bench_test::state({{SurfaceState::cleaned, 100}})}};
  reel.record.visits.push_back(next);
  CHECK(*assess(reel.record, 1).untouched_surface.found == share(80, 80));
}

TEST_CASE("only this reel's own surfaces are weighed") {
  ReelOnBench reel = ten_places();
  for (int i = 0; i < 10; ++i) {
    reel.seen("p" + std::to_string(i), {{SurfaceState::untouched, 100}},
              {{SurfaceState::untouched, 100}});
  }
  reel.visit().findings.pieces[0].found->surface[0].state = SurfaceState::refinished;
  reel.visit().findings.pieces[0].left->surface[0].state = SurfaceState::refinished;
  CHECK(*assess(reel).untouched_surface.found == share(90, 90));
  reel.record.pieces[0].of_this_reel.answer = record::OfThisReel::no;
  CHECK(*assess(reel).untouched_surface.found == share(100, 100));
  CHECK_FALSE(assess(reel).rows[0].found.surface_weighed);
  CHECK(assess(reel).rows[0].found.makers_surface);
  reel.record.pieces[0].made_by.answer = record::MadeBy::another;
  CHECK_FALSE(assess(reel).rows[0].found.makers_surface);
  reel.record.pieces[0].of_this_reel.answer = record::OfThisReel::not_determined;
  CHECK(*assess(reel).untouched_surface.found == share(90, 100));
  CHECK(has(assess(reel).rows[0], Reason::surface_perhaps_anothers));
}

TEST_CASE("a surface that left the reel is not there as left") {
  ReelOnBench reel = ten_places();
  for (int i = 0; i < 10; ++i) {
    reel.seen("p" + std::to_string(i), {{SurfaceState::polished, 100}},
              {{SurfaceState::polished, 100}});
  }
  reel.donor_piece("bright", "donor");
  reel.seen("bright", {}, {{SurfaceState::untouched, 100}});
  reel.fit("bright", "at-p0", "p0");
  const Finding finding = assess(reel);
  CHECK(*finding.untouched_surface.found == share(30, 30));
  CHECK(*finding.untouched_surface.left == share(27, 27));
}

TEST_CASE("no more is left than was found, whatever is written") {
  ReelOnBench reel;
  reel.place("plate", "1");
  reel.piece("plate");
  reel.sits("plate", "plate");
  reel.seen("plate", {{SurfaceState::polished, 100}}, {{SurfaceState::untouched, 100}});
  Finding finding = assess(reel);
  CHECK(*finding.untouched_surface.left == share(30, 30));
  CHECK(has(finding.rows[0], Reason::held_at_found));

  // Not examined as found: what was seen as left was there as found.
  reel.visit().findings.pieces[0].found->surface.clear();
  finding = assess(reel);
  CHECK(*finding.untouched_surface.found == share(100, 100));
  CHECK(has(finding.rows[0], Reason::found_at_least_as_left));
}

TEST_CASE("a later finish is never reported as the maker's") {
  ReelOnBench reel;
  reel.place("ring", "1");
  record::Piece& ring = reel.piece("ring");
  ring.finish = {{"nickel", record::FinishBy::maker, {}, {}}};
  reel.sits("ring", "ring");
  reel.seen("ring", {{SurfaceState::untouched, 100}}, {{SurfaceState::cleaned, 100}});
  CHECK(*assess(reel).untouched_surface.found == share(100, 100));

  ring.finish.push_back({"chrome", record::FinishBy::life, {}, {}});
  CHECK(*assess(reel).untouched_surface.found == share(0, 0));
  CHECK(has(assess(reel).rows[0], Reason::finished_later));
  ring.finish.back().by = record::FinishBy::not_determined;
  CHECK(*assess(reel).untouched_surface.found == share(0, 100));
  ring.finish.back().by = record::FinishBy::bench;
  CHECK(*assess(reel).untouched_surface.found == share(100, 100));
  CHECK(*assess(reel).untouched_surface.left == share(0, 0));
  ring.finish.back().when = bench_test::date("2014");
  CHECK(*assess(reel).untouched_surface.found == share(0, 0));
}

// ---- assembled
// ------------------------------------------------------------------------------------

TEST_CASE("a reel of which no reel gave half is assembled, and has no index") {
  const auto with_own = [](int own) {
    ReelOnBench reel = ten_places();
    for (int i = own; i < 10; ++i) {
      record::Piece& piece = reel.record.pieces[static_cast<std::size_t>(i)];
      piece.of_this_reel.answer = record::OfThisReel::no;
      piece.donor = record::DonorId{i % 2 == 0 ? "even" : "odd"};
    }
    return reel;
  };
  CHECK(assess(with_own(5)).assembled.empty());  // half is enough
  CHECK(*assess(with_own(5)).original.found == share(50, 50));
  const Finding finding = assess(with_own(4));
  REQUIRE(finding.assembled.size() == 2);
  CHECK(finding.assembled[0].at_least_reels == 3);
  CHECK(finding.assembled[0].largest_share == share(40, 40));
  CHECK_FALSE(finding.original.found);
  CHECK_FALSE(finding.untouched_surface.found);
  CHECK(finding.right_for_model.found);
  CHECK(finding.original_change.shares.empty());
  CHECK_FALSE(finding.way_back.original_restored);

  // A donor may be the reel; then there is one to speak of.
  ReelOnBench donors = with_own(2);
  for (int i = 2; i < 8; ++i) {
    donors.record.pieces[static_cast<std::size_t>(i)].donor = record::DonorId{"even"};
  }
  CHECK(assess(donors).assembled.empty());

  // What is not determined may all be one reel's.
  ReelOnBench open = with_own(4);
  open.record.pieces[9].donor.reset();
  open.record.pieces[9].of_this_reel.answer = record::OfThisReel::not_determined;
  CHECK(assess(open).assembled.empty());
}

TEST_CASE("reels that each gave a fifth are what it is put together from") {
  const auto with_donor = [](int pieces) {
    ReelOnBench reel = ten_places();
    for (int i = 0; i < pieces; ++i) {
      record::Piece& piece = reel.record.pieces[static_cast<std::size_t>(i)];
      piece.of_this_reel.answer = record::OfThisReel::no;
      piece.donor = record::DonorId{"donor"};
    }
    return assess(reel);
  };
  CHECK(with_donor(0).reels == 1);
  CHECK(with_donor(1).reels == 1);  // spares, not a second reel
  CHECK(with_donor(2).reels == 2);
  CHECK(with_donor(2).assembled.empty());  // one still dominates, and has its index
  CHECK(with_donor(2).original.found);
  CHECK(with_donor(9).reels == 1);  // all but a spare came off one reel
  // What is not determined is nobody's for certain.
  ReelOnBench open = ten_places();
  for (record::Piece& piece : open.record.pieces)
    piece.of_this_reel.answer = record::OfThisReel::not_determined;
  CHECK(assess(open).reels == 1);
}

TEST_CASE("the bench can assemble a reel, and then only the index as left is gone") {
  ReelOnBench reel = ten_places();
  for (int i = 0; i < 6; ++i) {
    const std::string n = std::to_string(i);
    reel.donor_piece("d" + n, i < 3 ? "first" : "second");
    reel.fit("d" + n, "at-p" + n, "p" + n);
  }
  const Finding finding = assess(reel);
  REQUIRE(finding.assembled.size() == 1);
  CHECK(finding.assembled[0].when == record::Moment::left);
  CHECK(finding.assembled[0].at_least_reels == 3);
  CHECK(*finding.original.found == share(100, 100));
  CHECK_FALSE(finding.original.left);
}

TEST_CASE("spares and pieces made for it came off no reel") {
  ReelOnBench reel = ten_places();
  for (std::size_t i = 4; i < 10; ++i) {
    reel.record.pieces[i].of_this_reel.answer = record::OfThisReel::no;
    reel.record.pieces[i].pattern.answer = record::Pattern::service_spare;
  }
  CHECK(assess(reel).assembled.empty());
  reel.record.pieces[4].pattern.answer = record::Pattern::right;  // off some reel of the maker's
  REQUIRE(assess(reel).assembled.size() == 2);
  CHECK(assess(reel).assembled[0].at_least_reels == 2);
  reel.record.pieces[5].made_by.answer = record::MadeBy::another;
  CHECK(assess(reel).assembled[0].at_least_reels == 3);
}

// ---- way back
// -------------------------------------------------------------------------------------

TEST_CASE("what a fitting took can go back as far as the record says") {
  using Outcome = Return::Outcome;
  using Because = Return::Because;
  using Kind = record::Whereabouts::Kind;
  for (const auto& [degree, kind, altered, outcome, because, low, high] :
       {std::tuple{100, Kind::bagged, false, Outcome::fully, Because::at_hand, 100, 100},
        std::tuple{100, Kind::to_owner, false, Outcome::fully, Because::at_hand, 100, 100},
        std::tuple{100, Kind::with_reel, false, Outcome::fully, Because::at_hand, 100, 100},
        std::tuple{100, Kind::bagged, true, Outcome::in_part, Because::at_hand, 100, 100},
        std::tuple{60, Kind::bagged, false, Outcome::in_part, Because::at_hand, 96, 96},
        std::tuple{0, Kind::bagged, false, Outcome::never, Because::degree_nought, 90, 90},
        std::tuple{100, Kind::lost, false, Outcome::never, Because::lost, 90, 90},
        std::tuple{100, Kind::scrapped, false, Outcome::never, Because::scrapped, 90, 90},
        std::tuple{100, Kind::kept_by_bench, false, Outcome::never, Because::kept_by_bench, 90, 90},
        std::tuple{100, Kind::not_known, false, Outcome::not_determined,
                   Because::whereabouts_not_known, 90, 100}}) {
    ReelOnBench reel = ten_places();
    reel.bench_piece("fresh");
    reel.fit("fresh", "at-p0", "p0", degree).reel_altered = altered;
    reel.now("p0", kind);
    const WayBack way = assess(reel).way_back;
    REQUIRE(way.returns.size() == 1);
    CHECK(way.returns[0].outcome == outcome);
    CHECK(way.returns[0].because == because);
    CHECK(*way.original_restored == share(low, high));
  }
}

TEST_CASE("without a written way back it is open, and a place found empty has none") {
  ReelOnBench reel = ten_places();
  reel.bench_piece("fresh");
  reel.fit("fresh", "at-p0", "p0").way_back.reset();
  reel.record.fittings.erase(reel.record.fittings.begin() + 1);  // p1 is missing
  reel.visit().findings.places.push_back(
      {{"at-p1"}, {}, record::Filled::empty, record::Filled::yes, {}});
  reel.bench_piece("tongue");
  reel.fit("tongue", "at-p1");
  const Finding finding = assess(reel);
  CHECK(*finding.original.found == share(90, 90));
  CHECK(*finding.original.left == share(80, 80));
  CHECK(*finding.way_back.original_restored == share(80, 90));
  CHECK(finding.way_back.not_determined == 1);
  CHECK(finding.way_back.nothing_there == 1);
  CHECK(row_at(finding, "at-p1").found.standing == Standing::missing);
  CHECK(row_at(finding, "at-p1").letter == "B");
}

TEST_CASE("a changed surface comes back only as far as is written") {
  ReelOnBench reel;
  reel.place("plate", "1");
  reel.piece("plate");
  reel.sits("plate", "plate");
  reel.seen("plate", {{SurfaceState::untouched, 100}}, {{SurfaceState::repaired, 100}});
  CHECK(*assess(reel).way_back.untouched_surface_restored == share(40, 40));
  REQUIRE(assess(reel).way_back.surface_losses.size() == 1);
  CHECK(assess(reel).way_back.surface_losses[0].lost.at_low == Ratio(60, 100));

  record::Work work;
  work.pieces = {{"plate"}};
  work.way_back = record::WayBack{{base::Decimal(50, 0)}, {}};
  reel.visit().work.push_back(work);
  CHECK(*assess(reel).way_back.untouched_surface_restored == share(70, 70));
}

// ---- the printed change
// -----------------------------------------------------------------------------

TEST_CASE("printed shares add up to the printed change where rounding alone would not") {
  // Three shares of a third of a point each way: 0.33 + 0.33 + 0.33 is not 1.00.
  Index index{share(100, 100), share(99, 99)};
  const Ratio third(-1, 300);
  const Change change{{{1, third, third}, {2, third, third}, {3, third, third}}};
  const auto shares = printed(index, change, 10000);
  REQUIRE(shares.size() == 3);
  CHECK(shares[0].low == -33);
  CHECK(shares[1].low == -33);
  CHECK(shares[2].low == -34);
  CHECK(printed(index, change, 100)[2].low == -1);
  CHECK(printed({}, change, 100).empty());
}

}  // namespace winchbook::assess::originality
