#include "assess/fitting/seat.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "base/files.h"

namespace {

using namespace winchbook::assess::fitting;

const winchbook::knowledge::DragKnowledge& table() {
  static const auto kLoaded =
      winchbook::knowledge::load_drag({winchbook::base::RealFiles(), WINCHBOOK_SOURCE_DIR});
  REQUIRE(kLoaded);
  return *kLoaded;
}

Seat seat_of(double bore, double sleeve, double tolerance = 0) {
  Seat seat;
  seat.bore = {bore, tolerance};
  seat.sleeve = {sleeve, tolerance};
  return seat;
}

StockWasher washer(double outside, double inside, const char* material = "leather") {
  StockWasher one;
  one.donor = "a tin";
  one.material = material;
  one.outside = outside;
  one.inside = inside;
  one.thickness = 1.5;
  one.count = 10;
  one.supplier = "Tarn Friction, Oldbeck";
  return one;
}

Candidate judged(const Seat& seat, const StockWasher& one, const Wanted& wanted = {},
                 double caliper = 0) {
  return find_washers(seat, wanted, {one}, caliper, table()).at(0);
}

bool says(const Candidate& candidate, SeatReason reason) {
  return std::count(candidate.reasons.begin(), candidate.reasons.end(), reason) == 1;
}

}  // namespace

TEST_CASE("a washer that clears recess and sleeve fits as it is") {
  const Candidate one = judged(seat_of(22, 8), washer(21.6, 8.3));
  CHECK(one.fit == Fit::as_it_is);
  CHECK(one.outside_clearance.low == doctest::Approx(0.4));
  CHECK(one.inside_clearance.high == doctest::Approx(0.3));
  CHECK(one.trim_outside == 0);
}

// Common practice: a washer has to move freely in its seat, tight is wrong: one size smaller still
// works, or the outside is trimmed.
TEST_CASE("tight is wrong: a size smaller works, or the outside is trimmed") {
  const Candidate tight = judged(seat_of(22, 8), washer(22.0, 8.3));
  CHECK(tight.fit == Fit::after_trimming);
  CHECK(tight.trim_outside == doctest::Approx(0.1));
  CHECK(says(tight, SeatReason::tight_outside));

  const Candidate smaller = judged(seat_of(22, 8), washer(22.0 - 1.6, 8.3));
  CHECK(smaller.fit == Fit::one_size_down);
  CHECK(smaller.trim_outside == 0);

  const Candidate too_small = judged(seat_of(22, 8), washer(19, 8.3));
  CHECK(too_small.fit == Fit::not_at_all);
  CHECK(says(too_small, SeatReason::too_small));
}

// ISO 286-2, limits of H9 and d9 by bands (25 mm: +52 0 and -65 -117 µm): the least room of the
// loose running fit. The edges: 30 mm belongs to "over 18 up to 30", 10 mm to "over 6 up to 10".
TEST_CASE("turning freely begins at the loose running fit of the seat's size") {
  CHECK(running_clearance(table(), 25) == doctest::Approx(0.065));
  CHECK(running_clearance(table(), 30) == doctest::Approx(0.065));
  CHECK(running_clearance(table(), 30.01) == doctest::Approx(0.080));
  CHECK(running_clearance(table(), 10) == doctest::Approx(0.040));
  CHECK(running_clearance(table(), 10.01) == doctest::Approx(0.050));
  CHECK(running_clearance(table(), 3) == doctest::Approx(0.020));
  CHECK(running_clearance(table(), 200) == doctest::Approx(0.100));
  CHECK(judged(seat_of(25, 8), washer(25 - 0.066, 8.3)).fit == Fit::as_it_is);
  CHECK(judged(seat_of(25, 8), washer(25 - 0.064, 8.3)).fit == Fit::after_trimming);
}

TEST_CASE("the doubt of the calipers is carried into the room and into what comes off") {
  const Candidate sharp = judged(seat_of(23.7, 7), washer(23.8, 7.3));
  CHECK(sharp.trim_outside == doctest::Approx(0.2));
  const Candidate doubtful = judged(seat_of(23.7, 7, 0.1), washer(23.8, 7.3), {}, 0.1);
  CHECK(doubtful.outside_clearance.low == doctest::Approx(-0.3));
  CHECK(doubtful.outside_clearance.high == doctest::Approx(0.1));
  CHECK(doubtful.trim_outside == doctest::Approx(0.4));
  // clear as measured, not beyond doubt
  const Candidate maybe = judged(seat_of(22, 8, 0.1), washer(21.85, 8.5), {}, 0.1);
  CHECK(maybe.fit == Fit::after_trimming);
  CHECK(says(maybe, SeatReason::within_tolerance));
}

TEST_CASE("only what is soft is trimmed, only so far, and asbestos never") {
  CHECK(judged(seat_of(22, 8), washer(23, 8.3, "carbon fibre")).fit == Fit::not_at_all);
  CHECK(says(judged(seat_of(22, 8), washer(23, 8.3, "carbon fibre")), SeatReason::hard_material));
  CHECK(judged(seat_of(22, 8), washer(24.3, 8.3)).fit == Fit::after_trimming);
  CHECK(says(judged(seat_of(22, 8), washer(24.4, 8.3)), SeatReason::too_much_to_trim));
  CHECK(says(judged(seat_of(12, 8), washer(12.2, 8.3)), SeatReason::too_much_to_trim));  // ring
  CHECK(says(judged(seat_of(22, 8), washer(23, 8.3, "woven asbestos")), SeatReason::hazard));
  CHECK(judged(seat_of(22, 8), washer(21.6, 8.3, "Asbestos")).fit == Fit::not_at_all);
  CHECK(says(judged(seat_of(22, 8), washer(21.6, 8.3, "moon rock")), SeatReason::unknown_material));
}

TEST_CASE("a tight hole is opened, a wide one wanders") {
  const Candidate tight = judged(seat_of(22, 8), washer(21.6, 7.5));
  CHECK(tight.fit == Fit::after_trimming);
  CHECK(tight.open_inside == doctest::Approx(0.6));
  CHECK(judged(seat_of(22, 8), washer(21.6, 10.4)).fit == Fit::as_it_is);
  CHECK(says(judged(seat_of(22, 8), washer(21.6, 10.5)), SeatReason::hole_too_large));
  // opening the hole does not cure an outside that wanders
  CHECK(judged(seat_of(22, 8), washer(17, 7.5)).fit == Fit::not_at_all);
}

TEST_CASE("metal washers need their ears or flats") {
  Wanted eared;
  eared.metal = true;
  eared.turns = Turns::with_gear;
  StockWasher metal = washer(21.6, 8.3, "steel");
  CHECK(says(judged(seat_of(22, 8), metal, eared), SeatReason::needs_ears));
  metal.turns = Turns::with_gear;
  CHECK(judged(seat_of(22, 8), metal, eared).fit == Fit::as_it_is);
  Wanted flatted = eared;
  flatted.turns = Turns::with_sleeve;
  CHECK(says(judged(seat_of(22, 8), metal, flatted), SeatReason::needs_flats));
  metal.turns = Turns::with_sleeve;
  metal.flats = 6.1;
  Seat seat = seat_of(22, 8);
  seat.flats = Gauge{6, 0};
  CHECK(judged(seat, metal, flatted).fit == Fit::as_it_is);
  metal.flats = 5.9;
  CHECK(says(judged(seat, metal, flatted), SeatReason::flats_do_not_match));
  metal.flats = 6.4;
  CHECK(says(judged(seat, metal, flatted), SeatReason::flats_do_not_match));
  StockWasher leather = washer(21.6, 8.3);
  leather.turns = Turns::with_gear;
  CHECK(says(judged(seat_of(22, 8), leather, eared), SeatReason::wrong_sort));
  CHECK(says(judged(seat_of(22, 8), leather), SeatReason::must_be_free));
}

// OSHA 29 CFR 1910.1001 appendix F and the EPA brochure on brakes and clutches of 2007: no eye can
// tell, and what was not tested is not cut.
TEST_CASE("an old washer is neither trimmed nor preferred, whatever it is of") {
  for (const char* material : {"leather", "cork", "felt", "red fibre"}) {
    CAPTURE(material);
    StockWasher old = washer(22.4, 8.3, material);
    old.supplier.clear();
    CHECK(judged(seat_of(22, 8), old).fit == Fit::not_at_all);
    CHECK(says(judged(seat_of(22, 8), old), SeatReason::not_tested));
    old.report = winchbook::knowledge::StockReport{"Fell Laboratory", "2026-05-02", "4471"};
    CHECK(judged(seat_of(22, 8), old).fit == Fit::after_trimming);
  }
  StockWasher old = washer(21.7, 8.3);
  old.supplier.clear();
  const auto order = find_washers(seat_of(22, 8), {}, {old, washer(22.4, 8.3)}, 0, table());
  CHECK(order[0].fit == Fit::after_trimming);  // new material, though it must be trimmed
  CHECK(says(order[1], SeatReason::not_tested));
  StockWasher metal = washer(21.7, 8.3, "steel");
  metal.supplier.clear();
  CHECK_FALSE(says(judged(seat_of(22, 8), metal), SeatReason::not_tested));
}

TEST_CASE("the best stands first, and too few of it behind enough") {
  Wanted three;
  three.count = 3;
  StockWasher few = washer(21.9, 8.3);
  few.count = 2;
  const auto order = find_washers(seat_of(22, 8), three,
                                  {washer(30, 8.3), washer(22.4, 8.3), washer(20.4, 8.3),
                                   washer(21.2, 8.3), few, washer(21.7, 8.3)},
                                  0, table());
  CHECK(order[0].washer.outside == 21.7);
  CHECK(order[1].washer.outside == 21.2);
  CHECK(order[2].fit == Fit::one_size_down);
  CHECK(order[3].fit == Fit::after_trimming);
  CHECK(order[4].washer.outside == 21.9);
  CHECK(says(order[4], SeatReason::too_few));
  CHECK(order[5].fit == Fit::not_at_all);
}

TEST_CASE("a washer thicker than the recess, and what it does to the stack") {
  Seat seat = seat_of(22, 8);
  seat.depth = Gauge{1.4, 0};
  CHECK(says(judged(seat, washer(21.6, 8.3)), SeatReason::too_thick));
  Wanted wanted;
  wanted.count = 3;
  wanted.thickness = 1.3;
  const Candidate thicker = judged(seat_of(22, 8), washer(21.6, 8.3), wanted);
  REQUIRE(thicker.height_change);
  CHECK(*thicker.height_change == doctest::Approx(0.6));
}

// Common practice: with the star off, a sleeve standing far below the rim of the housing means that
// there are hardly any washers left, and the star would rub.
TEST_CASE("a sunk sleeve means too little stack") {
  Seat seat = seat_of(22, 8);
  seat.sunk = Gauge{3, 0.1};
  const StackFinding finding = judge_stack(seat, {}, 0, table());
  CHECK(finding.press == Press::star_on_housing);
  REQUIRE(finding.missing);
  CHECK(*finding.missing == doctest::Approx(3.6));
  seat.sunk = Gauge{-1, 0.1};
  CHECK(judge_stack(seat, {}, 0, table()).press == Press::presses);
  seat.sunk = Gauge{-0.3, 0.1};
  CHECK(judge_stack(seat, {}, 0, table()).press == Press::doubtful);
}

TEST_CASE("post and spacer are apart: the star presses while the stack is above both limits") {
  using enum Turns;
  const std::vector<StackWasher> stack{
      {"leather", freely, 2}, {"steel", with_sleeve, 1}, {"leather", freely, 2}};
  Seat seat = seat_of(22, 8);
  seat.post = Gauge{4, 0};
  seat.spacer = Gauge{10, 0};
  seat.housing = Gauge{14, 0};
  const StackFinding good = judge_stack(seat, stack, 0, table());
  CHECK(good.press == Press::presses);
  CHECK_FALSE(good.missing);
  CHECK(good.faces == 1);
  CHECK(good.height->low == doctest::Approx(5));
  seat.post = Gauge{5.5, 0};
  CHECK(judge_stack(seat, stack, 0, table()).press == Press::spacer_on_post);
  seat.post = Gauge{4, 0};
  seat.housing = Gauge{15.5, 0};
  const StackFinding bottoms = judge_stack(seat, stack, 0, table());
  CHECK(bottoms.press == Press::star_on_housing);
  CHECK(*bottoms.missing == doctest::Approx(1.0));
  seat.housing = Gauge{14.8, 0};
  CHECK(judge_stack(seat, stack, 0, table()).press == Press::doubtful);
  seat.housing.reset();
  seat.post.reset();
  CHECK(judge_stack(seat, stack, 0, table()).press == Press::not_determined);
}

TEST_CASE("what cannot be a seat is refused in a sentence") {
  CHECK(fault_of(seat_of(22, 8)).empty());
  CHECK_FALSE(fault_of(seat_of(8, 22)).empty());
  CHECK_FALSE(fault_of(seat_of(8, 8)).empty());
  CHECK_FALSE(fault_of(seat_of(0, 0)).empty());
  Seat seat = seat_of(22, 8);
  seat.depth = Gauge{0, 0};
  CHECK_FALSE(fault_of(seat).empty());
}
