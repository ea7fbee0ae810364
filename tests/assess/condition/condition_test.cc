#include "assess/condition/condition.h"

#include <doctest/doctest.h>

#include <string>
#include <tuple>

#include "assess/reel_on_bench.h"

namespace winchbook::assess::condition {
namespace {

using base::Ratio;
using bench_test::ReelOnBench;
using record::SurfaceState;

Finding assess(const record::Record& record) {
  return condition::assess(record, record.visits.back(), bench_test::shipped(),
                           knowledge::parts_list(bench_test::shipped(), "multiplier"));
}
Finding assess(const ReelOnBench& reel) {
  return assess(reel.record);
}

const knowledge::ConditionRules& rules() {
  return bench_test::shipped().condition;
}

Ratio per_thousand(int share) {
  return {share, 1000};
}

WordRange one(int word) {
  return {word, word};
}

/// One plate of 1000 mm² with `finish` tenths of a percent of the maker's finish as left.
ReelOnBench plate(int finish) {
  ReelOnBench reel;
  reel.place("plate", "1").exposed_area = {bench_test::decimal("1000")};
  reel.piece("plate");
  reel.sits("plate", "plate");
  reel.seen("plate", {{SurfaceState::untouched, 100}}, {});
  auto& surface = reel.visit().findings.pieces[0].left->surface;
  surface.push_back({SurfaceState::cleaned, {base::Decimal(finish, 1)}});
  surface.push_back({SurfaceState::worn_through, {base::Decimal(1000 - finish, 1)}});
  return reel;
}

record::Test test_of(record::Verdict before, record::Verdict after) {
  record::Test test;
  test.before.kind = test.after.kind = record::TestResult::Kind::done;
  test.before.verdict = before;
  test.after.verdict = after;
  return test;
}

ReelOnBench with_tests(int as_made, int with_care, int in_part, int not_working) {
  ReelOnBench reel;
  const auto add = [&](int count, record::Verdict verdict) {
    for (int i = 0; i < count; ++i)
      reel.visit().findings.tests.push_back(test_of(verdict, verdict));
  };
  add(as_made, record::Verdict::as_made);
  add(with_care, record::Verdict::with_care);
  add(in_part, record::Verdict::in_part);
  add(not_working, record::Verdict::not_working);
  return reel;
}

WorkingReading working(const ReelOnBench& reel) {
  return assess(reel).found.working;
}

/// A reel that somebody looked at, with a fault of each gravity as given.
ReelOnBench with_faults(int unsafe, int weakening, int blemish) {
  ReelOnBench reel = plate(1000);
  const auto add = [&](int count, record::Severity severity) {
    for (int i = 0; i < count; ++i) {
      record::Fault fault;
      fault.id = {"fault-" + std::to_string(reel.visit().findings.faults.size())};
      fault.found = severity;
      reel.visit().findings.faults.push_back(fault);
    }
  };
  add(blemish, record::Severity::blemish);
  add(weakening, record::Severity::weakening);
  add(unsafe, record::Severity::unsafe);
  return reel;
}

/// Twenty places, `empty` of them seen to be empty and `unseen` not looked into.
ReelOnBench with_places(int empty, int unseen = 0) {
  ReelOnBench reel;
  for (int i = 0; i < 20; ++i) {
    const std::string n = "p" + std::to_string(i);
    reel.place(n, "1");
    if (i < empty) {
      reel.visit().findings.places.push_back(
          {{n}, {}, record::Filled::empty, record::Filled::empty, {}});
    } else if (i < empty + unseen) {
      const auto unseen_place = record::Filled::not_examined;
      reel.visit().findings.places.push_back({{n}, {}, unseen_place, unseen_place, {}});
    } else {
      reel.piece(n);
      reel.sits(n, n);
    }
  }
  return reel;
}

}  // namespace

TEST_CASE("boundary: surface words begin strictly over their thresholds") {
  // Three quarters are not over three quarters, nor is a quarter over a quarter (every grading
  // scale must say how strict it is).
  for (const auto& [share, word] :
       {std::pair{0, 3}, std::pair{249, 3}, std::pair{250, 3}, std::pair{251, 2}, std::pair{499, 2},
        std::pair{500, 2}, std::pair{501, 1}, std::pair{749, 1}, std::pair{750, 1},
        std::pair{751, 0}, std::pair{999, 0}, std::pair{1000, 0}}) {
    const int thousandths = share;
    CAPTURE(thousandths);
    const Finding finding = assess(plate(share));
    CHECK(finding.left.finish_left.word == one(word));
    CHECK(*finding.left.finish_left.share ==
          base::RatioRange{per_thousand(share), per_thousand(share)});
    CHECK(finding.found.finish_left.word == one(0));
  }
}

TEST_CASE("boundary: completeness words begin where they are written to") {
  for (const auto& [share, word] : {std::pair{1000, 0}, std::pair{999, 1}, std::pair{901, 1},
                                    std::pair{900, 2}, std::pair{899, 2}, std::pair{501, 2},
                                    std::pair{500, 3}, std::pair{499, 3}, std::pair{0, 3}}) {
    const int thousandths = share;
    CAPTURE(thousandths);
    CHECK(word_of(rules().completeness, per_thousand(share)) == word);
  }
  CHECK(assess(with_places(0)).found.completeness.word == one(0));
  CHECK(assess(with_places(1)).found.completeness.word == one(1));   // 95 in a hundred
  CHECK(assess(with_places(2)).found.completeness.word == one(2));   // 90
  CHECK(assess(with_places(9)).found.completeness.word == one(2));   // 55
  CHECK(assess(with_places(10)).found.completeness.word == one(3));  // 50
}

TEST_CASE("words are equal steps on the line, whatever their thresholds") {
  const auto at = [](int share) { return position_of(rules().surface, per_thousand(share)); };
  // The surface's thresholds are quarters: its mark stands at the share itself.
  for (const int share : {0, 125, 250, 500, 625, 750, 875, 1000}) {
    CAPTURE(share);
    CHECK(at(share) == per_thousand(share));
  }
  CHECK(position_of(rules().completeness, Ratio(1, 1)) == Ratio(1, 1));
  CHECK(position_of(rules().completeness, Ratio(95, 100)) == Ratio(5, 8));
  CHECK(position_of(rules().completeness, Ratio(70, 100)) == Ratio(3, 8));
  CHECK(position_of(rules().completeness, Ratio(25, 100)) == Ratio(1, 8));
  for (int share = 0; share < 1000; ++share) {
    for (const auto* axis : {&rules().surface, &rules().completeness}) {
      CHECK(position_of(*axis, per_thousand(share)) < position_of(*axis, per_thousand(share + 1)));
      // The mark stands in the step of its word.
      const int word = word_of(*axis, per_thousand(share));
      CHECK(position_of(*axis, per_thousand(share)) <= Ratio(4 - word, 4));
      CHECK(position_of(*axis, per_thousand(share)) >= Ratio(3 - word, 4));
    }
  }
}

TEST_CASE("each state of a surface is, or is not, the maker's finish") {
  for (const auto& [state, low, high] :
       {std::tuple{SurfaceState::untouched, 1, 1}, std::tuple{SurfaceState::cleaned, 1, 1},
        std::tuple{SurfaceState::worn_through, 0, 0}, std::tuple{SurfaceState::polished, 0, 0},
        std::tuple{SurfaceState::stripped, 0, 0}, std::tuple{SurfaceState::repaired, 0, 0},
        std::tuple{SurfaceState::refinished, 0, 0},
        std::tuple{SurfaceState::darkened_on_purpose, 0, 1}}) {
    ReelOnBench reel = plate(1000);
    reel.visit().findings.pieces[0].left = bench_test::state({{state, 100}});
    CHECK(*assess(reel).left.finish_left.share == base::RatioRange{Ratio(low, 1), Ratio(high, 1)});
  }
}

TEST_CASE("surface goes by exposed area: measured, else the usual shares, never mixed") {
  ReelOnBench reel = plate(0);
  reel.place("knob", "1").exposed_area = {bench_test::decimal("3000")};
  reel.record.places.back().kind = "knob";
  reel.piece("knob");
  reel.sits("knob", "knob");
  reel.seen("knob", {{SurfaceState::untouched, 100}}, {{SurfaceState::untouched, 100}});
  CHECK(assess(reel).area_basis == AreaBasis::measured);
  CHECK(assess(reel).left.finish_left.share->low == Ratio(3, 4));
  CHECK(assess(reel).left.finish_left.word == one(1));

  reel.record.places[1].exposed_area.reset();  // not measured: not weighed
  CHECK(assess(reel).left.finish_left.share->low == Ratio(0, 1));

  reel.record.places[0].exposed_area.reset();
  reel.record.places[0].kind = "tail-plate";  // 18 of the outside; the knob 6
  CHECK(assess(reel).area_basis == AreaBasis::usual_shares);
  CHECK(assess(reel).left.finish_left.share->low == Ratio(1, 4));

  reel.record.places[0].kind = reel.record.places[1].kind = "nowhere";
  CHECK(assess(reel).area_basis == AreaBasis::none);
  CHECK(assess(reel).left.finish_left.word == WordRange{0, 3});
  CHECK_FALSE(assess(reel).left.finish_left.share);
}

TEST_CASE("only the maker's finish counts, on whichever reel he put it") {
  using record::MadeBy;
  for (const auto& [made_by, low, high] :
       {std::tuple{MadeBy::this_maker, 1, 1}, std::tuple{MadeBy::another, 0, 0},
        std::tuple{MadeBy::bench, 0, 0}, std::tuple{MadeBy::owner, 0, 0},
        std::tuple{MadeBy::not_determined, 0, 1}}) {
    ReelOnBench reel = plate(1000);
    reel.record.pieces[0].of_this_reel.answer = record::OfThisReel::no;
    reel.record.pieces[0].made_by.answer = made_by;
    CHECK(*assess(reel).found.finish_left.share == base::RatioRange{Ratio(low, 1), Ratio(high, 1)});
  }
}

TEST_CASE("restored label: refinished or plated again is never the maker's finish, and is named") {
  ReelOnBench reel = plate(1000);
  CHECK(assess(reel).restored.empty());  // wear is not restoring
  reel.visit().findings.pieces[0].left = bench_test::state({{SurfaceState::untouched, 100}});

  reel.record.pieces[0].finish = {{"nickel", record::FinishBy::maker, {}, {}},
                                  {"chrome", record::FinishBy::life, {}, {}}};
  Finding finding = assess(reel);
  CHECK(finding.found.finish_left.word == one(3));
  CHECK(finding.found.finish_left.share->high == Ratio(0, 1));
  REQUIRE(finding.restored.size() == 1);
  CHECK(finding.restored[0].state == SurfaceState::refinished);
  CHECK(finding.restored[0].found);

  reel.record.pieces[0].finish.clear();
  reel.visit().findings.pieces[0].left =
      bench_test::state({{SurfaceState::untouched, 90}, {SurfaceState::refinished, 10}});
  finding = assess(reel);
  CHECK(finding.left.finish_left.word == one(0));  // the word does not fall, and yet it is named
  REQUIRE(finding.restored.size() == 1);
  CHECK_FALSE(finding.restored[0].found);
  CHECK(finding.restored[0].left);

  // A piece of its life was always so.
  reel.record.pieces[0].made_by.answer = record::MadeBy::owner;
  reel.record.pieces[0].of_this_reel.answer = record::OfThisReel::no;
  CHECK(assess(reel).restored.empty());
}

TEST_CASE("unknown: an axis that nobody examined is a range, not the best word") {
  const Finding nothing = assess(ReelOnBench());
  for (const Readings* readings : {&nothing.found, &nothing.left}) {
    CHECK(readings->finish_left.word == WordRange{0, 3});
    CHECK(readings->structure.word == WordRange{0, 3});
    CHECK(readings->working.word == WordRange{0, 3});
    CHECK(readings->completeness.word == WordRange{0, 3});
    for (const Position& position : {readings->finish_left.position, readings->structure.position,
                                     readings->working.position, readings->completeness.position}) {
      CHECK(position == Position{Ratio(0, 1), Ratio(1, 1)});
    }
  }
  // A surface examined in part is open by what is left over.
  ReelOnBench reel = plate(1000);
  reel.visit().findings.pieces[0].left = bench_test::state({{SurfaceState::untouched, 60}});
  CHECK(assess(reel).left.finish_left.word == WordRange{0, 1});
  CHECK(*assess(reel).left.finish_left.share == base::RatioRange{Ratio(60, 100), Ratio(1, 1)});
  // A place that nobody looked into may be filled.
  CHECK(assess(with_places(1, 2)).found.completeness.word == WordRange{1, 2});
  CHECK(assess(with_places(0, 2)).found.completeness.not_examined == 2);
}

TEST_CASE("structure is the gravest named fault's, and every fault is counted and named") {
  // Only whoever looked for faults and found none can call it sound.
  ReelOnBench looked = with_faults(0, 0, 0);
  CHECK(assess(looked).found.structure.word == WordRange{0, 3});
  looked.visit().findings.looked_for.push_back({record::LookedFor::faults, {}, {}, {}});
  CHECK(assess(looked).found.structure.word == one(0));
  CHECK(assess(with_faults(0, 0, 1)).found.structure.word == one(1));
  CHECK(assess(with_faults(0, 1, 4)).found.structure.word == one(2));
  const Finding finding = assess(with_faults(1, 2, 3));
  CHECK(finding.found.structure.word == one(3));
  CHECK(finding.found.structure.faults() == 6);
  CHECK(finding.found.structure.weakening == 2);
  REQUIRE(finding.faults_found.size() == 6);
  CHECK(finding.faults_found[0].text == "fault-5");  // the unsafe one first
  CHECK(assess(with_faults(0, 0, 0)).found.structure.position.high == Ratio(1, 1));
  CHECK(assess(with_faults(0, 0, 1)).found.structure.position.high == Ratio(17, 24));
  CHECK(assess(with_faults(0, 0, 9)).found.structure.position.high == Ratio(13, 24));
  CHECK(assess(with_faults(0, 1, 0)).found.structure.position.high == Ratio(11, 24));
  CHECK(assess(with_faults(9, 0, 0)).found.structure.position.high == Ratio(1, 24));
}

TEST_CASE("a fault put right is named as that, and gone as left") {
  ReelOnBench reel = with_faults(0, 1, 1);
  reel.visit().findings.faults[1].as_left = record::FaultLeft::put_right;
  const Finding finding = assess(reel);
  CHECK(finding.found.structure.word == one(2));
  CHECK(finding.left.structure.word == one(1));
  REQUIRE(finding.put_right.size() == 1);
  CHECK(finding.put_right[0].text == "fault-1");
  CHECK(finding.faults_left.size() == 1);
}

TEST_CASE("working follows the tests, and no test makes up for another") {
  CHECK(working(with_tests(8, 0, 0, 0)).word == one(0));
  CHECK(working(with_tests(7, 1, 0, 0)).word == one(1));
  CHECK(working(with_tests(7, 0, 1, 0)).word == one(2));
  CHECK(working(with_tests(7, 0, 0, 1)).word == one(2));
  CHECK(working(with_tests(0, 0, 1, 7)).word == one(2));
  CHECK(working(with_tests(0, 0, 0, 8)).word == one(3));
  CHECK(working(with_tests(8, 0, 0, 0)).position.low == Ratio(1, 1));
  CHECK(working(with_tests(3, 1, 0, 0)).position.low == Ratio(7, 10));
  CHECK(working(with_tests(3, 0, 0, 1)).position.low == Ratio(7, 16));
  CHECK(working(with_tests(3, 0, 1, 0)).position.low == Ratio(15, 32));
  CHECK(working(with_tests(0, 0, 0, 3)).position.low == Ratio(0, 1));
}

TEST_CASE("a test not made leaves the axis open; one not safe to make closes its best words") {
  ReelOnBench reel = with_tests(3, 0, 0, 0);
  reel.visit().findings.tests.emplace_back();
  CHECK(working(reel).word == WordRange{0, 2});
  CHECK(working(reel).not_tested == 1);
  reel.visit().findings.tests.back().before.kind = record::TestResult::Kind::not_safe_to_test;
  CHECK(working(reel).word == WordRange{2, 2});
  CHECK(working(reel).not_safe_to_test == 1);
  // Done, and nobody wrote how it went.
  reel.visit().findings.tests.back().before.kind = record::TestResult::Kind::done;
  CHECK(working(reel).word == WordRange{0, 2});
}

TEST_CASE("named exception: one failing aspect does not bring an axis to its end, and is named") {
  // Appraisal literature on grading (museum guidance): one failing aspect alone does not drop the
  // grade, but must be named.
  const Finding missing = assess(with_places(1));
  CHECK(missing.found.completeness.word == one(1));
  REQUIRE(missing.empty.size() == 1);
  CHECK(missing.empty[0].place.text == "p0");
  const WorkingReading failing = working(with_tests(7, 0, 0, 1));
  CHECK(failing.word == one(2));
  CHECK(failing.not_working == 1);
}

TEST_CASE("no average: what befalls one axis moves no other") {
  const Finding good = assess(plate(1000));
  ReelOnBench reel = plate(1000);
  record::Fault crack;
  crack.id = {"crack"};
  crack.found = record::Severity::unsafe;
  reel.visit().findings.faults.push_back(crack);
  const Finding cracked = assess(reel);
  CHECK(cracked.found.structure.word == one(3));
  CHECK(cracked.found.finish_left.position == good.found.finish_left.position);
  CHECK(cracked.found.completeness.position == good.found.completeness.position);
  CHECK(cracked.found.working.position == good.found.working.position);

  // And a hundred good places do not hide the fault.
  for (int i = 0; i < 100; ++i) {
    const std::string n = "good" + std::to_string(i);
    reel.place(n, "1");
    reel.piece(n);
    reel.sits(n, n);
  }
  CHECK(assess(reel).found.structure.word == one(3));
  CHECK(assess(reel).faults_found.size() == 1);
}

TEST_CASE("completeness counts what fills a place, whoever made it; loose is there") {
  ReelOnBench reel = with_places(1);
  reel.bench_piece("new");
  reel.fit("new", "p0");
  reel.visit().findings.places.clear();
  const Finding finding = assess(reel);
  CHECK(finding.found.completeness.empty == 1);
  CHECK(finding.left.completeness.filled == 20);
  CHECK(finding.left.completeness.word == one(0));

  reel.seen("p5", {}, {}).found->presence = record::Presence::loose;
  reel.seen("p6", {}, {}).found->presence = record::Presence::missing;
  CHECK(assess(reel).found.completeness.loose == 1);
  CHECK(assess(reel).found.completeness.filled == 18);
  reel.place("option", "1").may_be_empty = true;
  CHECK(assess(reel).found.completeness.seats == 20);
}

TEST_CASE("corrosion is rated by area, and appearance never above protection") {
  // ISO 10289: the appearance rating is never above the protection rating.
  ReelOnBench reel = plate(1000);
  CHECK(assess(reel).corrosion.empty());
  auto& found = *reel.visit().findings.pieces[0].found;
  found.corroded = {bench_test::decimal("5.0")};
  found.appearance_defects = {bench_test::decimal("0.3")};
  reel.visit().findings.pieces[0].left->appearance_defects = {bench_test::decimal("0.3")};
  const Finding finding = assess(reel);
  REQUIRE(finding.corrosion.size() == 1);
  CHECK(finding.corrosion[0].protection_found == 4);
  CHECK(finding.corrosion[0].appearance_found == 4);  // 7 alone
  CHECK(finding.corrosion[0].appearance_left == 7);
  CHECK_FALSE(finding.corrosion[0].protection_left);
  found.corroded = {bench_test::decimal("0.1")};
  CHECK(assess(reel).corrosion[0].appearance_found == 7);
}

TEST_CASE("monotone: better evidence on an axis never lowers it") {
  int raised = 0;
  for (unsigned seed = 1; seed <= 400; ++seed) {
    CAPTURE(seed);
    bench_test::Dice dice(seed);
    ReelOnBench reel = bench_test::any_reel(seed);
    for (record::Place& place : reel.record.places) {
      place.exposed_area = {base::Decimal(1 + dice.below(500), 0)};
    }
    for (int i = 0; i < 4; ++i) {
      reel.visit().findings.tests.push_back(
          test_of(static_cast<record::Verdict>(dice.below(4)), record::Verdict::as_made));
      record::Fault fault;
      fault.id = {"fault-" + std::to_string(i)};
      fault.found = static_cast<record::Severity>(dice.below(3));
      reel.visit().findings.faults.push_back(fault);
    }
    const Readings before = assess(reel).found;
    auto& findings = reel.visit().findings;
    // Each in its own way better than it was.
    auto& verdict = findings.tests[static_cast<std::size_t>(dice.below(4))].before.verdict;
    if (*verdict != record::Verdict::as_made) {
      verdict = static_cast<record::Verdict>(static_cast<int>(*verdict) - 1);
    }
    findings.faults.erase(findings.faults.begin() + dice.below(4));
    for (record::PieceFinding& finding : findings.pieces) {
      if (!finding.found || finding.found->surface.empty()) continue;
      if (finding.found->presence == record::Presence::missing) continue;
      finding.found->surface[0].state = SurfaceState::untouched;
    }
    const Readings after = assess(reel).found;
    CHECK(after.working.position.low >= before.working.position.low);
    CHECK(after.working.word.worst <= before.working.word.worst);
    CHECK(after.structure.position.high >= before.structure.position.high);
    CHECK(after.structure.word.best <= before.structure.word.best);
    CHECK(after.finish_left.position.low >= before.finish_left.position.low);
    CHECK(after.finish_left.position.high >= before.finish_left.position.high);
    CHECK(after.completeness.position == before.completeness.position);
    if (after.finish_left.position.low > before.finish_left.position.low) ++raised;
  }
  CHECK(raised > 50);
}

TEST_CASE("permutation: the order in which things are entered changes no axis") {
  for (unsigned seed = 1; seed <= 400; ++seed) {
    CAPTURE(seed);
    ReelOnBench reel = bench_test::any_reel(seed);
    reel.record.places[0].exposed_area = {base::Decimal(300, 0)};
    const Finding one_way = assess(reel.record);
    const Finding other = assess(bench_test::shuffled(reel.record, seed));
    const auto same = [](const Readings& a, const Readings& b) {
      CHECK(a.finish_left.position == b.finish_left.position);
      CHECK(a.structure.position == b.structure.position);
      CHECK(a.working.position == b.working.position);
      CHECK(a.completeness.position == b.completeness.position);
      CHECK(a.completeness.loose == b.completeness.loose);
    };
    same(one_way.found, other.found);
    same(one_way.left, other.left);
    CHECK(one_way.restored.size() == other.restored.size());
  }
}

}  // namespace winchbook::assess::condition
