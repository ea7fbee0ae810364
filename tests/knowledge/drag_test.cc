#include "knowledge/drag.h"

#include <doctest/doctest.h>

#include <array>

namespace {

using namespace winchbook::knowledge;

const DragKnowledge& table() {
  static const auto kLoaded = load_drag({winchbook::base::RealFiles(), WINCHBOOK_SOURCE_DIR});
  REQUIRE(kLoaded);
  return *kLoaded;
}

}  // namespace

// Rows of ISO 286-2 as read in two reckoners, and where the standard's rounded table differs from
// the formula (10 mm H7 is 15, not 14; 30 mm is in "over 18 up to 30").
TEST_CASE("limits are those of ISO 286-2") {
  struct Row {
    const char* zone;
    double size;
    int upper;
    int lower;
  };
  constexpr std::array kRows{
      Row{"H7", 10, 15, 0},    Row{"H7", 18, 18, 0},     Row{"H7", 30, 21, 0},
      Row{"H7", 50, 25, 0},    Row{"H7", 80, 30, 0},     Row{"H7", 6, 12, 0},
      Row{"g6", 10, -5, -14},  Row{"g6", 25, -7, -20},   Row{"f7", 25, -20, -41},
      Row{"h6", 25, 0, -13},   Row{"h6", 10, 0, -9},     Row{"H8", 25, 33, 0},
      Row{"H9", 25, 52, 0},    Row{"d9", 25, -65, -117}, Row{"H8", 10, 22, 0},
      Row{"f7", 10, -13, -28}, Row{"H9", 10, 36, 0}};
  for (const Row& row : kRows) {
    const FitLimit* limit = find_limit(table(), row.zone, row.size);
    REQUIRE_MESSAGE(limit != nullptr, row.zone);
    CHECK(limit->upper == row.upper);
    CHECK(limit->lower == row.lower);
  }
  CHECK(find_limit(table(), "H7", 80.01) == nullptr);
  CHECK(find_limit(table(), "H7", 0) == nullptr);
  CHECK(find_limit(table(), "z9", 10) == nullptr);
}

// Clearances of published fits: 25 H7/g6 7 to 41 µm, H7/h6 0 to 34, H8/f7 20 to 74; 10 H7/g6 5 to
// 29, H7/h6 0 to 24.
TEST_CASE("fits have the published clearances") {
  struct Fit {
    double size;
    const char* hole;
    const char* shaft;
    int least;
    int most;
  };
  constexpr std::array kFits{Fit{25, "H7", "g6", 7, 41}, Fit{25, "H7", "h6", 0, 34},
                             Fit{25, "H8", "f7", 20, 74}, Fit{10, "H7", "g6", 5, 29},
                             Fit{10, "H7", "h6", 0, 24}};
  for (const Fit& fit : kFits) {
    const FitLimit* hole = find_limit(table(), fit.hole, fit.size);
    const FitLimit* shaft = find_limit(table(), fit.shaft, fit.size);
    REQUIRE(hole != nullptr);
    REQUIRE(shaft != nullptr);
    CHECK(hole->lower - shaft->upper == fit.least);
    CHECK(hole->upper - shaft->lower == fit.most);
  }
}

TEST_CASE("friction is found by any name of the material, and ranges run upwards") {
  CHECK(find_friction(table(), "Vulcanized Fiber") == find_friction(table(), "red fibre"));
  CHECK(find_friction(table(), "granite") == nullptr);
  CHECK(find_friction(table(), "moulded asbestos")->sort == WasherSort::hazard);
  for (const Friction& row : table().friction) {
    CHECK_FALSE(row.source.empty());
    if (row.dry_low) CHECK(*row.dry_low <= *row.dry_high);
    if (row.greased_low) CHECK(*row.greased_low <= *row.greased_high);
    if (row.dry_high && row.greased_high) CHECK(*row.greased_high <= *row.dry_high);
  }
}

TEST_CASE("every rule of the seat has its figure") {
  const SeatRules& seat = table().seat;
  for (const double rule : {seat.same_size, seat.one_step, seat.most_trim, seat.least_ring,
                            seat.press_margin, seat.flats_play}) {
    CHECK(rule > 0);
  }
  CHECK(table().settings.size() == 5);
}
