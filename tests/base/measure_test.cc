#include "base/measure.h"

#include <doctest/doctest.h>

#include <string>
#include <string_view>

namespace {

using winchbook::base::Dimension;
using winchbook::base::parse_measure;

double value(std::string_view text, Dimension dimension) {
  const auto measure = parse_measure(text, dimension);
  REQUIRE_MESSAGE(bool(measure), std::string(text));
  return measure->value;
}

std::string fault(std::string_view text, Dimension dimension) {
  const auto measure = parse_measure(text, dimension);
  REQUIRE_MESSAGE(!measure, std::string(text));
  return measure.faults().front().message;
}

}  // namespace

// Exact factors: NIST Special Publication 811 (2008), appendix B.8.
TEST_CASE("factors are those of NIST SP 811") {
  CHECK(value("1 in", Dimension::length) == 25.4);
  CHECK(value("1 ft", Dimension::length) == doctest::Approx(304.8).epsilon(1e-15));
  CHECK(value("1 yd", Dimension::length) == doctest::Approx(914.4).epsilon(1e-15));
  CHECK(value("1 lbf", Dimension::force) == 4.4482216152605);
  CHECK(value("1 ozf", Dimension::force) == 0.27801385095378125);
  CHECK(value("1 kgf", Dimension::force) == 9.80665);
  CHECK(value("1 lb", Dimension::mass) == 453.59237);
  CHECK(value("1 oz", Dimension::mass) == 28.349523125);
  CHECK(value("1 lbf·in", Dimension::torque) == doctest::Approx(0.1129848290276167).epsilon(1e-15));
  CHECK(value("1 lbf·ft", Dimension::torque) == doctest::Approx(1.3558179483314004).epsilon(1e-15));
  CHECK(value("1 ozf·in", Dimension::torque) ==
        doctest::Approx(0.00706155181422604375).epsilon(1e-15));
  CHECK(value("1 kgf·cm", Dimension::torque) == doctest::Approx(0.0980665).epsilon(1e-15));
  CHECK(value("1 psi", Dimension::pressure) ==
        doctest::Approx(0.006894757293168361).epsilon(1e-15));
}

TEST_CASE("a figure is read as people type it") {
  CHECK(value("22 mm", Dimension::length) == 22);
  CHECK(value("22mm", Dimension::length) == 22);
  CHECK(value("  2.2 cm ", Dimension::length) == doctest::Approx(22));
  CHECK(value("0.875 in", Dimension::length) == doctest::Approx(22.225).epsilon(1e-15));
  CHECK(value("7/8\"", Dimension::length) == doctest::Approx(22.225).epsilon(1e-15));
  CHECK(value("7/8″", Dimension::length) == doctest::Approx(22.225).epsilon(1e-15));
  CHECK(value("1 7/8 in", Dimension::length) == doctest::Approx(47.625));
  CHECK(value("1-7/8 inches", Dimension::length) == doctest::Approx(47.625));
  CHECK(value("1.2 N·m", Dimension::torque) == 1.2);
  CHECK(value("1.2 Nm", Dimension::torque) == 1.2);
  CHECK(value("1.2 N m", Dimension::torque) == 1.2);
  CHECK(value("10 in-lbf", Dimension::torque) == value("10 lbf·in", Dimension::torque));
  CHECK(value("22\u00a0mm", Dimension::length) == 22);
  CHECK(value("-3 mm", Dimension::length) == -3);
}

TEST_CASE("a tolerance has the figure's unit or its own") {
  const auto both = parse_measure("22 ± 0.05 mm", Dimension::length);
  REQUIRE(both);
  CHECK(both->value == 22);
  CHECK(both->tolerance == 0.05);
  const auto own = parse_measure("7/8 in +/- 0.1 mm", Dimension::length);
  REQUIRE(own);
  CHECK(own->value == doctest::Approx(22.225).epsilon(1e-15));
  CHECK(own->tolerance == 0.1);
  CHECK_FALSE(parse_measure("22 ± mm", Dimension::length));
  CHECK_FALSE(parse_measure("22 ± -1 mm", Dimension::length));
}

TEST_CASE("pound force and pound mass stay apart") {
  const auto pull = parse_measure("20 lb", Dimension::force);
  REQUIRE(pull);
  CHECK(pull->value == doctest::Approx(20 * 4.4482216152605).epsilon(1e-14));
  CHECK(pull->assumed.find("taken as a pull") != std::string::npos);
  const auto force = parse_measure("20 lbf", Dimension::force);
  REQUIRE(force);
  CHECK(force->assumed.empty());
  CHECK(fault("20 lbf", Dimension::mass) == "\"20 lbf\" is a force, and a mass is wanted");
  CHECK(fault("9 N", Dimension::mass) == "\"9 N\" is a force, and a mass is wanted");
}

TEST_CASE("what is no figure is refused, with its cure") {
  CHECK(fault("22", Dimension::length) == "\"22\" has no unit: it could mean more than one thing");
  CHECK(fault("22,5 mm", Dimension::length) == "\"22,5 mm\" has a comma in it");
  CHECK(fault("1,200 yd", Dimension::length) == "\"1,200 yd\" has a comma in it");
  CHECK(fault("3 furlong", Dimension::length) == "there is no unit \"furlong\"");
  CHECK(fault("3 mm", Dimension::force) == "\"3 mm\" is a length, and a force is wanted");
  const auto rule = [](std::string_view text) {
    return parse_measure(text, Dimension::length).faults().front().rule;
  };
  CHECK(rule("22,5 mm") == "measure-comma");
  CHECK(rule("22 furlong") == "measure-unit");
  CHECK(rule("some mm") == "measure-figure");
  for (const char* text : {"", "mm", "7/0 in", "1.2.3 mm", "inf mm", "nan mm", "1e3 mm", "0x10 mm",
                           "--3 mm", "3 / mm", "⅞ in"}) {
    CHECK_MESSAGE(!parse_measure(text, Dimension::length), text);
  }
  CHECK_FALSE(parse_measure(std::string(100000, '9') + " mm", Dimension::length));
}
