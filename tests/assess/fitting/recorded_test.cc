#include "assess/fitting/recorded.h"

#include <doctest/doctest.h>

#include <algorithm>

#include "base/files.h"

namespace winchbook::assess::fitting {
namespace {

const knowledge::DragKnowledge& known() {
  static const auto kKnown = knowledge::load_drag({base::RealFiles(), WINCHBOOK_SOURCE_DIR});
  REQUIRE(bool(kKnown));
  return *kKnown;
}

base::Decimal decimal(const char* text) {
  return base::Decimal::parse(text).value();
}

/// A star drag of one free leather washer of 25 / 10 mm, set to 12 N at 4 : 1 with 60 mm wound on.
record::Record reel() {
  record::Record record;
  record.reel.brake = record::Brake::star;
  record.reel.gear_ratio = decimal("4");
  record::Piece leather;
  leather.id = {"leather"};
  leather.name = "Leather washer";
  leather.material = "leather";
  record::Piece steel;
  steel.id = {"steel"};
  steel.name = "Flatted washer";
  steel.material = "steel";
  record.pieces = {leather, steel};
  record::Visit visit;
  visit.id = {"v-1"};
  visit.drag = record::DragStack{};
  visit.drag->greased = false;
  visit.drag->washers = {{{"leather"},
                          record::Keyed::free,
                          base::Millimetres{decimal("10")},
                          base::Millimetres{decimal("25")},
                          base::Millimetres{decimal("1.5")}}};
  visit.drag->setting = base::Newtons{decimal("12")};
  visit.drag->spool_full = base::Millimetres{decimal("60")};
  visit.drag->spool_empty = base::Millimetres{decimal("30")};
  record.visits.push_back(visit);
  return record;
}

RecordedDrag drag_of(const record::Record& record) {
  return recorded_drag(record, record.visits.back(), known());
}

bool lacks(const RecordedDrag& drag, Lacking what) {
  return std::find(drag.lacking.begin(), drag.lacking.end(), what) != drag.lacking.end();
}

}  // namespace

TEST_CASE("the force follows from the setting, and the curve from the force") {
  // By hand: T = 12 N · 4 · 0.030 m = 1.44 N·m; arm ⅔ (12.5³ − 5³) / (12.5² − 5²) = 9.2857 mm; the
  // middle of leather's 0.3 to 0.5 dry is 0.4.
  const RecordedDrag drag = drag_of(reel());
  REQUIRE(drag.lacking.empty());
  CHECK(drag.faces == 1);
  CHECK(drag.friction.low == doctest::Approx(0.3));
  CHECK(drag.friction.high == doctest::Approx(0.5));
  CHECK(drag.force == doctest::Approx(387.69).epsilon(1e-4));
  const Pull& full = drag.finding.pulls.front();
  const Pull& empty = drag.finding.pulls.back();
  CHECK(full.pressure.low == doctest::Approx(9));
  CHECK(full.pressure.high == doctest::Approx(15));
  // Worn in, the arm is (12.5 + 5) / 2 = 8.75 mm.
  CHECK(full.wear.low == doctest::Approx(9 * 8.75 / 9.285714));
  CHECK(full.wear.high == doctest::Approx(15 * 8.75 / 9.285714));
  // Half as wide, twice the pull.
  CHECK(empty.pressure.high == doctest::Approx(30));
  CHECK(drag.curve.size() == 21);
  CHECK(drag.curve.front().fill == 100);
  CHECK(drag.curve.back().fill == 0);
}

TEST_CASE("it is what the drag by itself gives for the same ring, force and fill") {
  const RecordedDrag drag = drag_of(reel());
  Drag same;
  same.ring = {25, 10};
  same.faces = 1;
  same.friction = {0.3, 0.5};
  same.force = drag.force;
  same.ratio = 4;
  same.spool = SpoolFill{60, 30};
  const DragFinding finding = reckon_drag(same);
  REQUIRE(finding.pulls.size() == drag.finding.pulls.size());
  for (std::size_t i = 0; i < finding.pulls.size(); ++i) {
    CHECK(finding.pulls[i].fill == drag.finding.pulls[i].fill);
    CHECK(finding.pulls[i].diameter == doctest::Approx(drag.finding.pulls[i].diameter));
    CHECK(finding.pulls[i].wear.low == doctest::Approx(drag.finding.pulls[i].wear.low));
    CHECK(finding.pulls[i].pressure.high == doctest::Approx(drag.finding.pulls[i].pressure.high));
  }
}

TEST_CASE("another setting, a gear's ratio or grease moves the figures") {
  record::Record other = reel();
  other.visits.back().drag->setting = base::Newtons{decimal("24")};
  CHECK(drag_of(other).force == doctest::Approx(2 * 387.69).epsilon(1e-4));
  other = reel();
  other.reel.gear_ratio = decimal("2");
  CHECK(drag_of(other).force == doctest::Approx(387.69 / 2).epsilon(1e-4));
  CHECK(drag_of(other).finding.pulls.back().pressure.high == doctest::Approx(30));
  other = reel();
  other.visits.back().drag->greased = true;
  CHECK(drag_of(other).friction.high == doctest::Approx(0.15));
  CHECK(drag_of(other).force > 900);
}

TEST_CASE("a lever slips at the spool, whatever the gears") {
  record::Record lever = reel();
  lever.reel.brake = record::Brake::lever;
  lever.reel.gear_ratio.reset();
  const RecordedDrag drag = drag_of(lever);
  CHECK(drag.lacking.empty());
  CHECK(drag.ratio == 1);
}

TEST_CASE("a face is as large as what both surfaces share, and the weaker of two slips") {
  record::Record record = reel();
  auto& washers = record.visits.back().drag->washers;
  washers.push_back({{"steel"},
                     record::Keyed::to_sleeve,
                     base::Millimetres{decimal("8")},
                     base::Millimetres{decimal("20")},
                     {}});
  const RecordedDrag drag = drag_of(record);
  REQUIRE(drag.rubbing.size() == 1);
  CHECK(drag.faces == 1);
  CHECK(drag.rubbing.front().ring.outer == 20);
  CHECK(drag.rubbing.front().ring.inner == 10);
  CHECK(drag.rubbing.front().material == "leather");
}

TEST_CASE("each measure that is missing is named, and nothing is reckoned") {
  const auto without = [](auto change) {
    record::Record record = reel();
    change(record);
    return drag_of(record);
  };
  using record::Record;
  const RecordedDrag none = without([](Record& r) { r.visits.back().drag.reset(); });
  CHECK(lacks(none, Lacking::stack));
  CHECK(none.curve.empty());
  const RecordedDrag setting = without([](Record& r) { r.visits.back().drag->setting.reset(); });
  CHECK(lacks(setting, Lacking::setting));
  CHECK(setting.finding.pulls.empty());
  CHECK(lacks(without([](Record& r) { r.reel.gear_ratio.reset(); }), Lacking::gear_ratio));
  CHECK(
      lacks(without([](Record& r) { r.visits.back().drag->spool_empty.reset(); }), Lacking::spool));
  const RecordedDrag sizes =
      without([](Record& r) { r.visits.back().drag->washers.front().outside.reset(); });
  CHECK(lacks(sizes, Lacking::sizes));
  CHECK(sizes.unmeasured == std::vector<std::string>{"Leather washer"});
  CHECK(lacks(without([](Record& r) { r.pieces.front().material = "moon cheese"; }),
              Lacking::friction));
}

TEST_CASE("a quarter to a third of the line's strength, when it is known") {
  record::Record record = reel();
  CHECK_FALSE(drag_of(record).finding.setting);
  record.visits.back().drag->line_strength = base::Newtons{decimal("120")};
  REQUIRE(drag_of(record).finding.setting);
  CHECK(drag_of(record).finding.setting->low == doctest::Approx(30));
  CHECK(drag_of(record).finding.setting->high == doctest::Approx(40));
}

TEST_CASE("the spool's other lines are near the one it was measured with") {
  record::Record record = reel();
  record.reel.capacity =
      record::LineCapacity{decimal("200"), base::Millimetres{decimal("0.30")}, "measured"};
  const Recorded all = recorded(record, record.visits.back(), known());
  REQUIRE(all.line.others.size() == 3);
  CHECK(all.line.others.back().diameter == doctest::Approx(0.40));
  CHECK(all.line.others.back().length == doctest::Approx(200 * 0.09 / 0.16));
  // π · 60 mm · 4
  REQUIRE(all.line.per_turn);
  CHECK(*all.line.per_turn == doctest::Approx(753.98).epsilon(1e-4));
}

TEST_CASE("the words of a card follow the decision, and a fault that is unsafe comes first") {
  record::Visit visit;
  CHECK(use_of(visit) == Use::undecided);
  visit.wishes.use = record::Use::keep;
  CHECK(use_of(visit) == Use::shelf);
  // A wish alone does not send a reel to the water; whoever says how to fish it does.
  visit.wishes.use = record::Use::fish;
  CHECK(use_of(visit) == Use::undecided);
  visit.care = record::CareAdvice{};
  visit.care->line = "0.25 mm";
  CHECK(use_of(visit) == Use::fish);
  visit.advice = record::Advice{};
  visit.advice->chosen = record::Course::make_it_fish;
  CHECK(use_of(visit) == Use::fish);
  visit.advice->chosen = record::Course::keep_as_found;
  CHECK(use_of(visit) == Use::shelf);
  visit.advice->chosen = record::Course::rebuild_to_fish;
  record::Fault crack;
  crack.as_left = record::FaultLeft::unsafe;
  visit.findings.faults.push_back(crack);
  CHECK(use_of(visit) == Use::not_safe);
}

}  // namespace winchbook::assess::fitting
