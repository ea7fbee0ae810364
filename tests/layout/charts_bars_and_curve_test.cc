#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "layout/drawn_page.h"

namespace winchbook {
namespace {

using document::BarChart;
using document::CurveChart;
using drawn::points;
using drawn::Shape;
using drawn::to_points;

template <class Chart>
layout::Frame set(const Chart& chart, const drawn::Bench& bench, double width) {
  return layout::set_chart(chart, points(width), 2, bench.setting);
}

/// Bars are 8 high, whether filled or open.
std::vector<Shape> bars_in(const layout::Frame& frame) {
  std::vector<Shape> all;
  for (const Shape& shape : drawn::shapes_in(frame)) {
    if (std::abs(shape.box.height() - 8) < 0.01) all.push_back(shape);
  }
  return all;
}

TEST_CASE("bars are as long as their values, the chosen one filled and its name bold") {
  const drawn::Bench bench;
  const layout::Frame frame =
      set(BarChart{{{"Fish it", 72, "72", true}, {"Show it", 36, "36", false}}}, bench, 309);
  const auto bars = bars_in(frame);
  REQUIRE(bars.size() == 2);
  CHECK(bars[0].box.left == doctest::Approx(75));
  CHECK(bars[0].box.width() == doctest::Approx(144));
  CHECK(bars[1].box.width() == doctest::Approx(72));
  CHECK(bars[0].path->filled);
  CHECK_FALSE(bars[1].path->filled);
  CHECK(drawn::find(frame, bench.fonts, "Fish")->face == bench.fonts.face("sans-bold"));
  CHECK(drawn::find(frame, bench.fonts, "Show")->face == bench.fonts.face("sans"));
  CHECK(drawn::find(frame, bench.fonts, "72")->box.left == doctest::Approx(75 + 144 + 6));
}

TEST_CASE("long figures shorten all bars alike, never one") {
  const drawn::Bench bench;
  const layout::Frame frame = set(
      BarChart{{{"a", 100, "100 advised and chosen", true}, {"b", 50, "50", false}}}, bench, 309);
  const auto bars = bars_in(frame);
  REQUIRE(bars.size() == 2);
  CHECK(bars[0].box.width() < 200);
  CHECK(bars[1].box.width() * 2 == doctest::Approx(bars[0].box.width()).epsilon(0.001));
}

TEST_CASE("nought is a line, not nothing") {
  const drawn::Bench bench;
  const layout::Frame frame = set(BarChart{{{"a", 0, "0", false}}}, bench, 309);
  REQUIRE(bars_in(frame).size() == 1);
  CHECK(bars_in(frame)[0].box.width() == doctest::Approx(0.75));
}

TEST_CASE("whatever the names and figures, bars and words keep inside and apart") {
  const drawn::Bench bench;
  std::mt19937 random(309);
  for (int round = 0; round < 40; ++round) {
    BarChart chart;
    for (unsigned i = 0; i < random() % 7; ++i) {
      chart.bars.push_back({drawn::some_words(random, 50), static_cast<double>(random() % 101),
                            drawn::some_words(random, 80), i == 0});
    }
    for (const double width : {471.0, 309.0, 147.0}) {
      const layout::Frame frame = set(chart, bench, width);
      CHECK(drawn::outside(frame, bench.fonts) == "");
      CHECK(drawn::overlapping(frame, bench.fonts) == "");
    }
  }
}

CurveChart drag() {
  return {"Pull at the line, in newtons",
          {{0, 8}, {0.2, 8.9}, {0.4, 10}, {0.6, 11.5}, {0.8, 13.7}, {1, 18}},
          "full",
          "empty",
          ""};
}

const layout::PathItem& curve_in(const layout::Frame& frame) {
  for (const Shape& shape : drawn::shapes_in(frame)) {
    if (shape.path->stroke.width == points(1.5)) return *shape.path;
  }
  FAIL("no curve");
  return *drawn::shapes_in(frame).at(0).path;
}

TEST_CASE("the curve passes its points, and rises between points that rise") {
  const drawn::Bench bench;
  const layout::Frame frame = set(drag(), bench, 147);
  const layout::PathItem& curve = curve_in(frame);
  REQUIRE(curve.steps.size() == 6);
  // The numbers 8 to 20 by fours stand on 62 points: 8 at the foot, 18 ten twelfths up.
  const double foot = to_points(curve.steps.front().to.y);
  const double top = to_points(curve.steps.back().to.y);
  CHECK(foot - top == doctest::Approx(62.0 * 10 / 12).epsilon(0.001));
  double before = foot;
  for (std::size_t i = 1; i < curve.steps.size(); ++i) {
    const layout::PathItem::Step& step = curve.steps[i];
    const double here = to_points(step.to.y);
    for (const double control : {to_points(step.control1.y), to_points(step.control2.y)}) {
      CHECK(control <= before + 0.002);
      CHECK(control >= here - 0.002);
    }
    before = here;
  }
}

TEST_CASE("a word stands under each end of the curve, and numbers beside round steps") {
  const drawn::Bench bench;
  const layout::Frame frame = set(drag(), bench, 147);
  const auto full = drawn::find(frame, bench.fonts, "full");
  const auto empty = drawn::find(frame, bench.fonts, "empty");
  REQUIRE(full);
  REQUIRE(empty);
  CHECK(full->box.left == doctest::Approx(to_points(curve_in(frame).steps.front().to.x)));
  CHECK(empty->box.right == doctest::Approx(147));
  for (const char* number : {"8", "12", "16", "20"}) {
    CHECK(drawn::find(frame, bench.fonts, number));
  }
}

CurveChart banded() {
  CurveChart chart = drag();
  for (const auto& [x, y] : chart.points) {
    chart.low.emplace_back(x, y * 0.7);
    chart.high.emplace_back(x, y * 1.3);
  }
  chart.from_nought = true;
  chart.height = 150;
  chart.marks = {{0.5, "5"}};
  chart.levels = {{16, "quarter"}, {21, "third"}};
  chart.below = document::plain("key");
  return chart;
}

/// Upright strokes of the band, by where they stand.
std::vector<Shape> strokes_in(const layout::Frame& frame) {
  std::vector<Shape> all;
  for (const Shape& shape : drawn::shapes_in(frame)) {
    if (shape.path->stroke.width == points(0.35)) all.push_back(shape);
  }
  return all;
}

TEST_CASE("strokes fill the band from the least to the most, and the curve runs through it") {
  const drawn::Bench bench;
  const layout::Frame frame = set(banded(), bench, 471);
  const auto strokes = strokes_in(frame);
  REQUIRE(strokes.size() > 100);
  // The axis runs from 0 to 30 over 150 points: 8 stands at 40, its band from 5.6 to 10.4.
  const double foot = to_points(curve_in(frame).steps.front().to.y) + 150 * 8.0 / 30;
  const Shape& first = strokes.front();
  CHECK(first.box.foot == doctest::Approx(foot - 150 * 5.6 / 30).epsilon(0.01));
  CHECK(first.box.top == doctest::Approx(foot - 150 * 10.4 / 30).epsilon(0.01));
  const Shape& last = strokes.back();
  CHECK(last.box.height() > first.box.height() * 2);
  const CurveChart bare = drag();
  CHECK(strokes_in(set(bare, bench, 471)).empty());
}

TEST_CASE("a level has its name over it, and its line stands at its value") {
  const drawn::Bench bench;
  const layout::Frame frame = set(banded(), bench, 471);
  const double foot = to_points(curve_in(frame).steps.front().to.y) + 150 * 8.0 / 30;
  const auto quarter = drawn::find(frame, bench.fonts, "quarter");
  const auto third = drawn::find(frame, bench.fonts, "third");
  REQUIRE(quarter);
  REQUIRE(third);
  CHECK(quarter->box.foot <= foot - 150 * 16.0 / 30);
  CHECK(third->box.foot <= foot - 150 * 21.0 / 30);
  CHECK(third->box.foot < quarter->box.top);
  const auto shapes = drawn::shapes_in(frame);
  CHECK(std::any_of(shapes.begin(), shapes.end(), [&](const Shape& shape) {
    return shape.box.width() > 400 &&
           std::abs((shape.box.top + shape.box.foot) / 2 - (foot - 80)) < 0.1;
  }));
  CHECK(drawn::find(frame, bench.fonts, "key"));
  CHECK(drawn::find(frame, bench.fonts, "5"));
}

TEST_CASE("whatever its band and levels, all of a curve's drawing stays inside") {
  const drawn::Bench bench;
  std::mt19937 random(471);
  for (int round = 0; round < 30; ++round) {
    CurveChart chart = banded();
    for (auto& [x, y] : chart.high)
      y += static_cast<double>(random() % 40);
    chart.levels[0].at = static_cast<double>(random() % 60);
    chart.levels[1].at = static_cast<double>(random() % 60);
    chart.levels[0].name = drawn::some_words(random, 60);
    for (const double width : {471.0, 228.0, 147.0}) {
      const layout::Frame frame = set(chart, bench, width);
      CHECK(drawn::outside(frame, bench.fonts) == "");
      CHECK(drawn::overlapping(frame, bench.fonts) == "");
    }
  }
}

TEST_CASE("a curve of one point, or of none, is only its title") {
  const drawn::Bench bench;
  CurveChart chart = drag();
  chart.points = {{0, 8}, {0, 9}};
  CHECK(drawn::shapes_in(set(chart, bench, 147)).empty());
  chart.points.clear();
  CHECK(drawn::shapes_in(set(chart, bench, 147)).empty());
}

TEST_CASE("whatever its points, a curve stays inside its axes") {
  const drawn::Bench bench;
  std::mt19937 random(147);
  for (int round = 0; round < 60; ++round) {
    CurveChart chart{drawn::some_words(random, 90),
                     {},
                     drawn::some_words(random, 30),
                     drawn::some_words(random, 30),
                     drawn::some_words(random, 12)};
    const double scale = std::pow(10, static_cast<double>(random() % 7) - 3);
    for (unsigned i = 0; i < 2 + random() % 12; ++i) {
      chart.points.emplace_back(static_cast<double>(random() % 1000) / 1000,
                                static_cast<double>(random() % 1000) * scale);
    }
    const layout::Frame frame = set(chart, bench, 147);
    CHECK(drawn::outside(frame, bench.fonts) == "");
    CHECK(drawn::overlapping(frame, bench.fonts) == "");
  }
}

}  // namespace
}  // namespace winchbook
