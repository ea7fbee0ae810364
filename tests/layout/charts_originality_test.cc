#include <doctest/doctest.h>

#include <cmath>
#include <random>

#include "layout/drawn_page.h"
#include "layout/shapes.h"

namespace winchbook {
namespace {

using document::OriginalityChart;
using drawn::points;
using drawn::Shape;
using drawn::to_points;

constexpr layout::TagId kFigure = 7;

OriginalityChart one_bar(double low, double high) {
  return {{{"The parts", {{"as found", {low, high}, "40 to 60"}}}}, {}};
}

layout::Frame set(const OriginalityChart& chart, const drawn::Bench& bench, double width = 471) {
  return layout::set_chart(chart, points(width), kFigure, bench.setting);
}

/// The bar's parts: plain ink 9 high, the hatching, the outline.
struct Bar {
  std::optional<drawn::Box> ink;
  std::optional<drawn::Box> hatch;
  std::optional<drawn::Box> outline;
};

Bar bar_in(const layout::Frame& frame) {
  Bar bar;
  for (const Shape& shape : drawn::shapes_in(frame)) {
    if (std::abs(shape.box.height() - 9) > 0.01) continue;
    if (shape.path->stroked) {
      bar.outline = shape.box;
    } else if (shape.path->steps.size() > 5) {
      bar.hatch = shape.box;
    } else if (shape.box.left == 162 && shape.box.width() > 0.76) {
      bar.ink = shape.box;
    }
  }
  return bar;
}

TEST_CASE("ink runs to the low figure, hatching to the high one, the outline to a hundred") {
  const drawn::Bench bench;
  // 471 - 162 - 57 for the figures leaves 252 for a hundred.
  const layout::Frame frame = set(one_bar(40, 60), bench);
  const Bar bar = bar_in(frame);
  REQUIRE(bar.ink);
  REQUIRE(bar.hatch);
  REQUIRE(bar.outline);
  CHECK(bar.ink->left == doctest::Approx(162));
  CHECK(bar.ink->right == doctest::Approx(162 + 100.8));
  CHECK(bar.hatch->left == doctest::Approx(162 + 100.8).epsilon(0.001));
  CHECK(bar.hatch->right == doctest::Approx(162 + 151.2).epsilon(0.001));
  CHECK(bar.outline->left == doctest::Approx(162));
  CHECK(bar.outline->right == doctest::Approx(414));
}

TEST_CASE("a share known exactly has no hatching, nought has no ink, a hundred is all ink") {
  const drawn::Bench bench;
  CHECK_FALSE(bar_in(set(one_bar(55, 55), bench)).hatch);
  CHECK_FALSE(bar_in(set(one_bar(0, 0), bench)).ink);
  const Bar full = bar_in(set(one_bar(100, 100), bench));
  REQUIRE(full.ink);
  CHECK(full.ink->right == doctest::Approx(414));
  const Bar open = bar_in(set(one_bar(0, 100), bench));
  CHECK_FALSE(open.ink);
  REQUIRE(open.hatch);
  CHECK(open.hatch->width() == doctest::Approx(252).epsilon(0.001));
}

TEST_CASE("bars stand 15 apart and 7.5 more between questions") {
  const drawn::Bench bench;
  const OriginalityChart chart{
      {{"The parts", {{"as found", {1, 2}, "1"}, {"as left", {1, 2}, "1"}}},
       {"Their surfaces", {{"as found", {1, 2}, "1"}}}},
      {}};
  const layout::Frame frame = set(chart, bench);
  std::vector<double> tops;
  for (const Shape& shape : drawn::shapes_in(frame)) {
    if (shape.path->stroked && std::abs(shape.box.height() - 9) < 0.01) {
      tops.push_back(shape.box.top);
    }
  }
  CHECK(tops == std::vector<double>{3, 18, 40.5});
}

TEST_CASE("the question and its figures stand level with the bar, the figures at the right edge") {
  const drawn::Bench bench;
  const layout::Frame frame = set(one_bar(40, 60), bench);
  const auto figures = drawn::find(frame, bench.fonts, "40 to 60");
  const auto when = drawn::find(frame, bench.fonts, "as found");
  const auto name = drawn::find(frame, bench.fonts, "The parts");
  REQUIRE(figures);
  REQUIRE(when);
  REQUIRE(name);
  CHECK(figures->box.right == doctest::Approx(471));
  CHECK(when->box.right == doctest::Approx(156));
  CHECK(name->box.left == doctest::Approx(0));
  CHECK(figures->baseline == doctest::Approx(when->baseline));
  CHECK(name->baseline == doctest::Approx(when->baseline));
}

TEST_CASE("everything of the chart carries its figure's tag") {
  const drawn::Bench bench;
  OriginalityChart chart = one_bar(40, 60);
  chart.below = document::plain("Hatched: not determined.");
  const layout::Frame frame = set(chart, bench);
  CHECK(frame.items.size() > 12);
  for (const layout::Item& item : frame.items) {
    CHECK(std::visit([](const auto& each) { return each.tag; }, item) == kFigure);
  }
}

TEST_CASE("whatever the record says, no bar leaves the frame and no words meet") {
  const drawn::Bench bench;
  std::mt19937 random(20260619);
  for (int round = 0; round < 40; ++round) {
    OriginalityChart chart;
    for (unsigned q = 0; q <= random() % 4; ++q) {
      OriginalityChart::Question question{drawn::some_words(random, 60), {}};
      for (unsigned b = 0; b <= random() % 4; ++b) {
        const auto low = static_cast<unsigned>(random() % 101);
        const auto high = low + static_cast<unsigned>(random() % (101 - low));
        question.bars.push_back({drawn::some_words(random, 25),
                                 {static_cast<double>(low), static_cast<double>(high)},
                                 drawn::some_words(random, 30)});
      }
      chart.questions.push_back(std::move(question));
    }
    if (round % 2 == 0) chart.below = document::plain(drawn::some_words(random, 200));
    for (const double width : {471.0, 309.0, 228.0}) {
      const layout::Frame frame = set(chart, bench, width);
      CHECK(drawn::outside(frame, bench.fonts) == "");
      CHECK(drawn::overlapping(frame, bench.fonts) == "");
    }
  }
}

using Corners = std::vector<std::pair<double, double>>;

/// Area of a polygon by the shoelace formula.
double area(const Corners& corners) {
  double twice = 0;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const auto& [x, y] = corners[i];
    const auto& [next_x, next_y] = corners[(i + 1) % corners.size()];
    twice += x * next_y - next_x * y;
  }
  return std::abs(twice) / 2;
}

/// True when each side runs along the box or rises at 45°.
bool slants(const Corners& corners) {
  for (std::size_t i = 0; i < corners.size(); ++i) {
    const double x = corners[(i + 1) % corners.size()].first - corners[i].first;
    const double y = corners[(i + 1) % corners.size()].second - corners[i].second;
    const bool along = std::abs(x) < 0.002 || std::abs(y) < 0.002;
    if (!along && std::abs(x + y) > 0.004) return false;
  }
  return true;
}

TEST_CASE("hatching stays inside its box, slants at 45° and covers what its measures say") {
  const layout::Rect box{points(10), points(20), points(100), points(40)};
  const layout::PathItem path = layout::hatched_box(box, {points(1), points(2.5), {}}, kFigure);
  drawn::Box inside;
  inside.add(10, 20);
  inside.add(110, 60);
  CHECK(drawn::box_of(path).inside(inside, 0));
  double covered = 0;
  Corners stripe;
  for (const layout::PathItem::Step& step : path.steps) {
    if (step.kind != layout::PathItem::Step::Kind::close) {
      stripe.emplace_back(to_points(step.to.x), to_points(step.to.y));
      continue;
    }
    CHECK(slants(stripe));
    covered += area(stripe);
    stripe.clear();
  }
  // One part in 2.5 of the box.
  CHECK(covered == doctest::Approx(100 * 40 / 2.5).epsilon(0.03));
}

}  // namespace
}  // namespace winchbook
