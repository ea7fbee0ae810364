#include "assess/fitting/drag.h"

#include <doctest/doctest.h>

#include <array>
#include <numbers>

namespace {

using namespace winchbook::assess::fitting;

constexpr auto kWear = PressureLaw::uniform_wear;
constexpr auto kEven = PressureLaw::uniform_pressure;
constexpr double kPsi = 0.006894757293168361;  // N/mm²
constexpr double kLbf = 4.4482216152605;
constexpr double kInch = 25.4;

Drag small_drag() {
  Drag drag;
  drag.ring = {24, 7};
  drag.faces = 3;
  drag.friction = {0.1, 0.2};
  drag.force = 120;
  return drag;
}

}  // namespace

// Shigley's Mechanical Engineering Design, worked single-plate clutch: F 4000 N, f 0.30, D 250 mm,
// d 175 mm, N 1: T 127.5 N·m and p 194 kPa by wear (recalled); by pressure 129 N·m and 160 kPa.
TEST_CASE("a single plate gives the textbook's torque and pressure") {
  const Ring ring{250, 175};
  CHECK(slip_torque(kWear, ring, 0.30, 4000, 1) == doctest::Approx(127.5).epsilon(1e-9));
  CHECK(greatest_pressure(kWear, ring, 4000) * 1000 == doctest::Approx(194.017).epsilon(1e-5));
  CHECK(slip_torque(kEven, ring, 0.30, 4000, 1) == doctest::Approx(128.824).epsilon(1e-5));
  CHECK(greatest_pressure(kEven, ring, 4000) * 1000 == doctest::Approx(159.779).epsilon(1e-5));
}

// The same book's multiple-disc clutch: p 120 psi, f 0.24, 6.5 and 4 in, N 6: F 1885 lbf,
// T 7125 lbf·in (recalled).
TEST_CASE("several plates give the textbook's force and torque") {
  const Ring ring{6.5 * kInch, 4 * kInch};
  const double force = clamping_force(kWear, ring, 120 * kPsi);
  CHECK(force / kLbf == doctest::Approx(1884.96).epsilon(1e-5));
  CHECK(slip_torque(kWear, ring, 0.24, force, 6) / (kLbf * kInch / 1000) ==
        doctest::Approx(7125.13).epsilon(1e-5));
}

// Juvinall and Marshek, Fundamentals of Machine Component Design, dry disc clutch: 6 hp at 200
// rpm, safety 2, f 0.2, 5 and 7 in, three discs: F 3150 lb, p 200 psi inside and 143 psi outside
// (read; 3151 exactly).
TEST_CASE("the force that a wanted torque needs is the textbook's") {
  const Ring ring{7 * kInch, 5 * kInch};
  const double wanted = 2 * 6 * 33000 * 12 / (2 * std::numbers::pi * 200) * kLbf * kInch / 1000;
  const double of_one = slip_torque(kWear, ring, 0.2, 1, 2 * 3);
  const double force = wanted / of_one;
  CHECK(force / kLbf == doctest::Approx(1050.42).epsilon(1e-4));  // six faces
  const double on_two = wanted / slip_torque(kWear, ring, 0.2, 1, 2);
  CHECK(on_two / kLbf == doctest::Approx(3151.27).epsilon(1e-5));
  CHECK(greatest_pressure(kWear, ring, on_two) / kPsi == doctest::Approx(200.616).epsilon(1e-4));
  CHECK(greatest_pressure(kWear, ring, on_two) / kPsi * 5 / 7 ==
        doctest::Approx(143.297).epsilon(1e-4));
}

// Seven steel and six friction discs, ro 100 mm, ri 65 mm, p 0.1 MPa, f 0.28: 396 N·m (statement
// and answer read; its printed working takes six faces and cannot reach its own answer).
TEST_CASE("the number that counts is of rubbing faces, not of discs") {
  std::vector<Turns> stack;
  for (int i = 0; i < 6; ++i) {
    stack.push_back(Turns::with_sleeve);  // friction disc, splined inside
    if (i < 5) stack.push_back(Turns::with_gear);
  }
  // the seventh and first steel discs are the pressure plates: here the floor, and a last gear disc
  stack.push_back(Turns::with_gear);
  const int between =
      rubbing_faces(stack) - 1;  // the sleeve's end plate is not part of that clutch
  CHECK(between == 12);
  const Ring ring{200, 130};
  const double force = clamping_force(kWear, ring, 0.1);
  CHECK(slip_torque(kWear, ring, 0.28, force, 12) == doctest::Approx(396.237).epsilon(1e-5));
  CHECK(slip_torque(kWear, ring, 0.28, force, 6) < 200);  // the page's working
}

// Wet clutch: T 400 N·m, 90 and 150 mm, p 1000 kPa, f 0.10: eight faces, F 8333 N (statement
// read, answer recalled).
TEST_CASE("a wet clutch needs the faces that were published") {
  const Ring ring{150, 90};
  const double at_limit = clamping_force(kWear, ring, 1.0);
  const double of_one = slip_torque(kWear, ring, 0.10, at_limit, 1);
  CHECK(static_cast<int>(400 / of_one) + 1 == 8);
  CHECK(400 / slip_torque(kWear, ring, 0.10, 1, 8) == doctest::Approx(8333.33).epsilon(1e-5));
}

TEST_CASE("pressure over wear is between 1 and 4/3, and follows from the ratio of the ring alone") {
  const auto ratio = [](double inner, double outer) {
    return slip_torque(kEven, {outer, inner}, 0.2, 10, 1) /
           slip_torque(kWear, {outer, inner}, 0.2, 10, 1);
  };
  CHECK(ratio(10, 20) == doctest::Approx(28.0 / 27));  // 1.0370 at a half
  CHECK(ratio(10, 30) == doctest::Approx(13.0 / 12));  // 1.0833 at a third
  CHECK(ratio(0, 30) == doctest::Approx(4.0 / 3));
  CHECK(ratio(5, 10) == doctest::Approx(ratio(50, 100)));
  double last = 2;
  for (int inner = 0; inner < 100; ++inner) {
    const double now = ratio(inner, 100);
    CHECK(now >= 1);
    CHECK(now <= 4.0 / 3 + 1e-12);
    CHECK(now < last);
    last = now;
  }
}

TEST_CASE("faces follow from what holds the washers") {
  using enum Turns;
  CHECK(rubbing_faces({}) == 1);  // the sleeve's plate on the gear's floor
  CHECK(rubbing_faces({freely}) == 1);
  CHECK(rubbing_faces({freely, freely, freely}) == 1);
  CHECK(rubbing_faces({with_gear}) == 1);
  CHECK(rubbing_faces({freely, with_sleeve, freely, with_gear, freely}) == 3);
  CHECK(rubbing_faces({with_gear, freely, with_sleeve, freely, with_gear, freely}) == 3);
  // keyed all to the gear, they rub once
  CHECK(rubbing_faces({with_gear, freely, with_gear, freely, with_gear}) == 1);
}

// Torque over radius: 0.2 N·m at 30 mm is 6.667 N, at 10 mm 20 N, and so on (reckoned by hand,
// and the pull doubles where the radius halves: read twice in words).
TEST_CASE("drag at the line is torque over the radius") {
  struct Case {
    double torque;
    double radius;
    double newtons;
  };
  constexpr std::array kCases{
      Case{0.2, 30, 6.666667},  Case{0.2, 25, 8.0},       Case{0.2, 20, 10.0},
      Case{0.2, 15, 13.333333}, Case{0.2, 10, 20.0},      Case{0.5, 30, 16.666667},
      Case{0.5, 25, 20.0},      Case{0.5, 20, 25.0},      Case{0.5, 15, 33.333333},
      Case{0.5, 10, 50.0},      Case{1.0, 30, 33.333333}, Case{1.0, 25, 40.0},
      Case{1.0, 20, 50.0},      Case{1.0, 15, 66.666667}, Case{1.0, 10, 100.0}};
  for (const Case& one : kCases) {
    Drag drag = small_drag();
    drag.friction = {0.2, 0.2};
    drag.force = one.torque / slip_torque(kWear, drag.ring, 0.2, 1, drag.faces);
    drag.spool = SpoolFill{2 * one.radius, one.radius};
    const DragFinding finding = reckon_drag(drag);
    CHECK(finding.pulls.front().wear.low == doctest::Approx(one.newtons).epsilon(1e-6));
    CHECK(finding.pulls.back().wear.low == doctest::Approx(2 * one.newtons).epsilon(1e-6));
  }
}

TEST_CASE("the pull rises as the spool empties, and falls through the gear") {
  Drag drag = small_drag();
  drag.spool = SpoolFill{60, 25};
  drag.ratio = 1;
  const DragFinding direct = reckon_drag(drag);
  drag.ratio = 2.5;
  const DragFinding geared = reckon_drag(drag);
  REQUIRE(direct.pulls.size() == 5);
  for (std::size_t i = 0; i < direct.pulls.size(); ++i) {
    CHECK(direct.pulls[i].wear.high == doctest::Approx(2.5 * geared.pulls[i].wear.high));
    if (i > 0) CHECK(direct.pulls[i].wear.low > direct.pulls[i - 1].wear.low);
    CHECK(direct.pulls[i].pressure.low > direct.pulls[i].wear.low);
  }
  // half the room is left at the diameter whose square is the middle of both squares
  CHECK(direct.pulls[2].diameter == doctest::Approx(45.9619).epsilon(1e-5));
}

// A quarter to a third of the line: 20 lb gives 5.0 to 6.67 lb (read).
TEST_CASE("the setting is a quarter to a third of the line") {
  Drag drag = small_drag();
  CHECK_FALSE(reckon_drag(drag).setting);
  drag.line = 20 * kLbf;
  const DragFinding finding = reckon_drag(drag);
  REQUIRE(finding.setting);
  CHECK(finding.setting->low / kLbf == doctest::Approx(5.0));
  CHECK(finding.setting->high / kLbf == doctest::Approx(6.6667).epsilon(1e-4));
}

TEST_CASE("what cannot be is refused in a sentence") {
  const auto fault = [](auto change) {
    Drag drag = small_drag();
    change(drag);
    return fault_of(drag);
  };
  CHECK(fault([](Drag&) {}).empty());
  CHECK_FALSE(fault([](Drag& d) { d.ring = {7, 24}; }).empty());
  CHECK_FALSE(fault([](Drag& d) { d.ring = {7, 7}; }).empty());
  CHECK_FALSE(fault([](Drag& d) { d.faces = 0; }).empty());
  CHECK_FALSE(fault([](Drag& d) { d.friction = {0, 0}; }).empty());
  CHECK_FALSE(fault([](Drag& d) { d.friction = {0.2, 1.6}; }).empty());
  CHECK(fault([](Drag& d) { d.friction = {1.5, 1.5}; }).empty());
  CHECK_FALSE(fault([](Drag& d) { d.friction = {0.3, 0.2}; }).empty());
  CHECK_FALSE(fault([](Drag& d) { d.force = 0; }).empty());
  CHECK_FALSE(fault([](Drag& d) { d.pressure = -1; }).empty());
  CHECK_FALSE(fault([](Drag& d) { d.ring.inner = 0, d.pressure = 1; }).empty());
  CHECK_FALSE(fault([](Drag& d) { d.ratio = 0; }).empty());
  CHECK_FALSE(fault([](Drag& d) { d.spool = SpoolFill{25, 60}; }).empty());
  CHECK_FALSE(fault([](Drag& d) { d.line = 0; }).empty());
}
