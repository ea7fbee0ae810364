#include "assess/advice/advice.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>

namespace {

using namespace winchbook::assess::advice;
using winchbook::base::Ratio;
using winchbook::record::Course;
using winchbook::record::Matter;
namespace assess = winchbook::assess;
namespace knowledge = winchbook::knowledge;
namespace record = winchbook::record;

const knowledge::CourseScores& bench() {
  static const auto kLoaded =
      knowledge::load_courses({winchbook::base::RealFiles(), WINCHBOOK_SOURCE_DIR});
  REQUIRE(kLoaded);
  return kLoaded->scores;
}

/// A reel in working order of which nothing else is known.
struct Case {
  record::Record reel;
  record::Visit visit;
  assess::originality::Finding originality;
  assess::condition::Finding condition;
  std::array<std::optional<double>, kCourses> values = {};

  [[nodiscard]] Finding advised(const std::vector<Matter>& ranking) const {
    return advise({reel, visit, originality, condition, bench(), values}, ranking);
  }
};

const std::vector<Matter> kUseFirst{Matter::use,      Matter::memory, Matter::originality,
                                    Matter::way_back, Matter::value,  Matter::cost};
const std::vector<Matter> kMemoryFirst{Matter::memory, Matter::originality, Matter::way_back,
                                       Matter::value,  Matter::cost,        Matter::use};

}  // namespace

// Barron and Barrett, Decision Quality Using Ranked Attribute Weights (1996): four attributes weigh
// 0.52, 0.27, 0.15, 0.06 (read); the fractions follow from the formula.
TEST_CASE("rank-order-centroid weights are exact") {
  CHECK(centroid_weight(1, 4) == Ratio(25, 48));
  CHECK(centroid_weight(2, 4) == Ratio(13, 48));
  CHECK(centroid_weight(3, 4) == Ratio(7, 48));
  CHECK(centroid_weight(4, 4) == Ratio(1, 16));
  constexpr std::array kPublished{52, 27, 15, 6};
  for (int k = 1; k <= 4; ++k) {
    CHECK(centroid_weight(k, 4).rounded(100) == kPublished.at(static_cast<std::size_t>(k - 1)));
  }
  CHECK(centroid_weight(1, 2) == Ratio(3, 4));
  CHECK(centroid_weight(2, 3) == Ratio(5, 18));
  CHECK(centroid_weight(1, 5) == Ratio(137, 300));
  for (int n = 1; n <= 10; ++n) {
    Ratio sum;
    for (int k = 1; k <= n; ++k) {
      sum = sum + centroid_weight(k, n);
      if (k > 1) CHECK(centroid_weight(k, n) < centroid_weight(k - 1, n));
    }
    CHECK(sum == Ratio(1, 1));
  }
}

TEST_CASE("matters that are not ranked share the rest, and a matter ranked twice counts once") {
  const auto none = weights_of({});
  for (const Ratio& one : none)
    CHECK(one == Ratio(1, 6));
  const auto two = weights_of({Matter::use, Matter::use, Matter::cost});
  CHECK(two.at(3) == centroid_weight(1, 6));
  CHECK(two.at(5) == centroid_weight(2, 6));
  CHECK(two.at(0) == two.at(1));
  Ratio sum;
  for (const Ratio& one : two)
    sum = sum + one;
  CHECK(sum == Ratio(1, 1));
}

TEST_CASE("the owner's ranking decides between fishing and keeping") {
  const Case plain;
  CHECK(plain.advised(kUseFirst).answer == Course::make_it_fish);
  const Finding keep = plain.advised(kMemoryFirst);
  CHECK(keep.answer == Course::keep_as_found);
  CHECK(keep.runner_up == Course::clean_for_show);
}

TEST_CASE("an unsafe fault that is still there forbids fishing, whatever is ranked") {
  Case cracked;
  record::Fault fault;
  fault.id = {"crack"};
  fault.name = "cracked foot";
  fault.found = record::Severity::unsafe;
  fault.as_left = record::FaultLeft::put_right;
  cracked.visit.findings.faults.push_back(fault);
  CHECK(cracked.advised(kUseFirst).answer == Course::make_it_fish);
  cracked.visit.findings.faults[0].as_left.reset();  // nobody looked again: it stands
  const Finding finding = cracked.advised(kUseFirst);
  REQUIRE(finding.answer);
  CHECK(*finding.answer != Course::make_it_fish);
  CHECK(*finding.answer != Course::rebuild_to_fish);
  REQUIRE(finding.stops.size() == 1);
  CHECK(finding.stops[0].why == Stop::Why::unsafe_fault);
  CHECK(finding.stops[0].name == "cracked foot");
}

TEST_CASE("what must stay forbids a rebuild; flags are minded and forbid nothing") {
  Case loved;
  record::LifeEvent event;
  event.must_stay = {{"knob"}};
  loved.reel.life.push_back(event);
  record::Flag flag;
  flag.kind = record::Flag::Kind::legal;
  flag.name = "protected material";
  loved.visit.findings.flags.push_back(flag);
  const Finding finding = loved.advised(kUseFirst);
  CHECK(finding.courses.at(3).forbidden);
  CHECK_FALSE(finding.courses.at(0).forbidden);
  REQUIRE(finding.stops.size() == 2);
  CHECK(finding.stops[0].why == Stop::Why::legal);
  CHECK(finding.stops[0].forbids.empty());
  CHECK(finding.stops[1].pieces.size() == 1);
}

TEST_CASE("a place that stays empty forbids making it fish") {
  Case gap;
  record::Place place;
  place.id = {"dog"};
  place.name = "Dog";
  gap.reel.places.push_back(place);
  gap.condition.empty.push_back({{"dog"}, 1, 1});
  CHECK(gap.advised(kUseFirst).courses.at(2).forbidden);
  gap.condition.empty[0].left = 0;
  CHECK_FALSE(gap.advised(kUseFirst).courses.at(2).forbidden);
  gap.condition.empty[0].left = 1;
  gap.reel.places[0].consumable = true;
  CHECK_FALSE(gap.advised(kUseFirst).courses.at(2).forbidden);
}

TEST_CASE("what the record knows takes the place of the bench's points") {
  Case known;
  record::Advice advice;
  advice.chosen = Course::make_it_fish;
  const auto pounds = [](std::int64_t amount) {
    return winchbook::base::Money{winchbook::base::Decimal(amount, 0), "GBP"};
  };
  advice.courses = {{Course::keep_as_found, pounds(0), pounds(0), {}},
                    {Course::make_it_fish, pounds(80), pounds(120), {}},
                    {Course::rebuild_to_fish, pounds(400), pounds(400), {}}};
  known.visit.advice = advice;
  known.originality.original.found = winchbook::base::RatioRange{Ratio(90, 100), Ratio(94, 100)};
  known.originality.original.left = winchbook::base::RatioRange{Ratio(80, 100), Ratio(80, 100)};
  known.condition.found.working.word = {2, 2};
  known.condition.left.working.word = {0, 0};
  known.values = {100, 100, 80, std::nullopt};
  const Finding finding = known.advised(kUseFirst);
  const auto& keep = finding.courses.at(0).scores;
  const auto& fish = finding.courses.at(2).scores;
  CHECK(keep.at(1).points == 92);
  CHECK(fish.at(1).points == 80);
  CHECK(fish.at(1).from == ScoreFrom::index);
  CHECK(keep.at(2).points == 100);
  CHECK(fish.at(2).points == 80);
  CHECK(keep.at(3).points == 33);
  CHECK(fish.at(3).points == 100);
  CHECK(keep.at(5).points == 100);
  CHECK(fish.at(5).points == 75);
  CHECK(finding.courses.at(3).scores.at(5).points == 0);
  CHECK(finding.courses.at(3).scores.at(0).from == ScoreFrom::bench);
  // without a figure: the bench's points, as they stand to the reel as found
  CHECK(finding.courses.at(3).scores.at(2).points == 60);
  CHECK(finding.courses.at(3).scores.at(2).from == ScoreFrom::bench);
  known.values = {};
  CHECK(known.advised(kUseFirst).courses.at(3).scores.at(2).points == 30);
  // not determined keeps the bench's points
  known.condition.left.working.word = {0, 2};
  CHECK(known.advised(kUseFirst).courses.at(2).scores.at(3).from == ScoreFrom::bench);
}

TEST_CASE("memory is kept while the pieces that must stay are still in the reel") {
  Case loved;
  record::LifeEvent event;
  event.must_stay = {{"knob"}, {"foot"}};
  loved.reel.life.push_back(event);
  for (const char* id : {"knob", "foot"}) {
    record::Piece piece;
    piece.id = {id};
    piece.now.kind = record::Whereabouts::Kind::fitted;
    loved.reel.pieces.push_back(piece);
  }
  record::Advice advice;
  advice.chosen = Course::make_it_fish;
  loved.visit.advice = advice;
  CHECK(loved.advised(kUseFirst).courses.at(2).scores.at(0).points == 100);
  CHECK(loved.advised(kUseFirst).courses.at(2).scores.at(0).from == ScoreFrom::kept);
  loved.reel.pieces[0].now.kind = record::Whereabouts::Kind::bagged;
  CHECK(loved.advised(kUseFirst).courses.at(2).scores.at(0).points == 50);
  CHECK(loved.advised(kUseFirst).courses.at(0).scores.at(0).from == ScoreFrom::bench);
}

TEST_CASE("what would turn the answer over does turn it over") {
  const Case plain;
  for (const auto& ranking : {kUseFirst, kMemoryFirst}) {
    const Finding finding = plain.advised(ranking);
    for (const Flip& flip : finding.flips) {
      if (flip.kind != Flip::Kind::swap) continue;
      std::vector<Matter> swapped = ranking;
      std::swap(*std::find(swapped.begin(), swapped.end(), flip.first),
                *std::find(swapped.begin(), swapped.end(), flip.second));
      const Finding then = plain.advised(swapped);
      CHECK(then.answer == flip.then);
      CHECK(then.answer != finding.answer);
    }
  }
}

TEST_CASE("a cost or a value that turns the answer is told, and a point less does not turn it") {
  Case close;
  close.values = {100, 50, 60, 30};
  record::Advice advice;
  const auto pounds = [](std::int64_t amount) {
    return winchbook::base::Money{winchbook::base::Decimal(amount, 0), "GBP"};
  };
  advice.courses = {{Course::keep_as_found, pounds(0), pounds(0), {}},
                    {Course::clean_for_show, pounds(40), pounds(40), {}},
                    {Course::make_it_fish, pounds(80), pounds(120), {}},
                    {Course::rebuild_to_fish, pounds(400), pounds(400), {}}};
  close.visit.advice = advice;
  const std::vector<Matter> ranking{Matter::value,       Matter::cost,     Matter::use,
                                    Matter::originality, Matter::way_back, Matter::memory};
  const Finding finding = close.advised(ranking);
  REQUIRE(finding.answer == Course::keep_as_found);
  const auto flip = [&](Flip::Kind kind) {
    const auto found = std::find_if(finding.flips.begin(), finding.flips.end(),
                                    [&](const Flip& one) { return one.kind == kind; });
    REQUIRE(found != finding.flips.end());
    return *found;
  };
  const auto gap = [&](std::size_t matter, int points) {
    const Scored& first = finding.courses.at(0);
    const auto second =
        std::find_if(finding.courses.begin(), finding.courses.end(),
                     [&](const Scored& one) { return one.course == *finding.runner_up; });
    return first.total - finding.weights.at(matter) * Ratio(points, 100) - second->total;
  };
  const Flip value = flip(Flip::Kind::value);
  CHECK(value.then == *finding.runner_up);
  CHECK(gap(2, value.points) < Ratio(0, 1));
  CHECK_FALSE(gap(2, value.points - 1) < Ratio(0, 1));
  const Flip cost = flip(Flip::Kind::cost);
  CHECK(gap(5, cost.points) < Ratio(0, 1));
  CHECK_FALSE(gap(5, cost.points - 1) < Ratio(0, 1));
  REQUIRE(cost.dearer_by);
  CHECK(cost.dearer_by->currency == "GBP");
  CHECK(cost.dearer_by->amount == winchbook::base::Decimal(4 * cost.points, 0));  // of 400
}

TEST_CASE("the reasons add up to what sets the answer before the runner-up") {
  const Case plain;
  const Finding finding = plain.advised(kUseFirst);
  const auto total = [&](Course which) {
    return std::find_if(finding.courses.begin(), finding.courses.end(),
                        [&](const Scored& one) { return one.course == which; })
        ->total;
  };
  Ratio sum;
  for (const Reason& one : finding.reasons) {
    CHECK((one.counts > Ratio(0, 1)) == (one.points > one.other));
    sum = sum + one.counts;
  }
  CHECK(sum == total(*finding.answer) - total(*finding.runner_up));
  CHECK(std::is_sorted(finding.reasons.begin(), finding.reasons.end(),
                       [](const Reason& a, const Reason& b) { return b.counts < a.counts; }));
}

TEST_CASE("the answer does not depend on the order in which equals are looked at") {
  const Case plain;
  const Finding once = plain.advised(kUseFirst);
  const Finding again = plain.advised(kUseFirst);
  CHECK(once.answer == again.answer);
  for (std::size_t i = 0; i < once.courses.size(); ++i) {
    CHECK(once.courses.at(i).total == again.courses.at(i).total);
    CHECK(once.courses.at(i).total <= Ratio(1, 1));
    CHECK(once.courses.at(i).total >= Ratio(0, 1));
  }
}
