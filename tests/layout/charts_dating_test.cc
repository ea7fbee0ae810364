#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <cstdlib>
#include <random>

#include "layout/drawn_page.h"

namespace winchbook {
namespace {

using document::DatingChart;
using drawn::points;
using drawn::Shape;
using drawn::to_points;
using End = DatingChart::End;

constexpr double kLeft = 162;
constexpr double kRight = 471;

layout::Frame set(const DatingChart& chart, const drawn::Bench& bench, double width = 471) {
  return layout::set_chart(chart, points(width), 3, bench.setting);
}

/// The place of a year when the axis runs from 1920 to 1960.
double at(double year) {
  return kLeft + (kRight - kLeft) * (year - 1920) / 40;
}

/// Marks that pin the axis to 1920 to 1960, and `mark` before them.
DatingChart with(DatingChart::Mark mark) {
  DatingChart chart;
  chart.marks = {std::move(mark), {"pins the axis", 1920, 1960, End::hard, End::hard}};
  return chart;
}

std::vector<Shape> filled_with(const layout::Frame& frame, document::Colour colour) {
  std::vector<Shape> all;
  for (const Shape& shape : drawn::shapes_in(frame)) {
    if (shape.path->filled && shape.path->fill == colour) all.push_back(shape);
  }
  return all;
}

/// Stops are ink, 2 by 11.
std::vector<drawn::Box> stops_in(const layout::Frame& frame, const document::Style& style) {
  std::vector<drawn::Box> all;
  for (const Shape& shape : filled_with(frame, style.ink)) {
    if (std::abs(shape.box.height() - 11) < 0.01) all.push_back(shape.box);
  }
  return all;
}

std::vector<drawn::Box> dots_in(const layout::Frame& frame) {
  std::vector<drawn::Box> all;
  for (const Shape& shape : drawn::shapes_in(frame)) {
    if (shape.path->stroke.dashes.size() == 2 && shape.path->stroke.dashes[0] == points(1)) {
      all.push_back(shape.box);
    }
  }
  return all;
}

TEST_CASE("hard ends stop at their dates") {
  const drawn::Bench bench;
  const layout::Frame frame = set(with({"Patent", 1934, 1939, End::hard, End::hard}), bench);
  const auto bars = filled_with(frame, bench.style.bar);
  REQUIRE(bars.size() == 2);
  CHECK(bars[0].box.left == doctest::Approx(at(1934)));
  CHECK(bars[0].box.right == doctest::Approx(at(1939)));
  CHECK(bars[0].box.height() == doctest::Approx(5.5));
  const auto stops = stops_in(frame, bench.style);
  REQUIRE(stops.size() == 4);
  CHECK(stops[0].left == doctest::Approx(at(1934)));
  CHECK(stops[1].right == doctest::Approx(at(1939)));
  CHECK(stops[0].width() == doctest::Approx(2));
}

TEST_CASE("a soft end tapers to a point over 16, or 42 % of a short bar") {
  const drawn::Bench bench;
  const auto taper = [&](double first, double last) {
    const layout::Frame frame = set(with({"Star", first, last, End::soft, End::hard}), bench);
    const layout::PathItem& path = *filled_with(frame, bench.style.bar).at(0).path;
    const double point = to_points(path.steps.at(0).to.x);
    CHECK(point == doctest::Approx(at(first)));
    return to_points(path.steps.at(1).to.x) - point;
  };
  CHECK(taper(1930, 1940) == doctest::Approx(16));
  CHECK(taper(1936, 1938) == doctest::Approx((at(1938) - at(1936)) * 0.42).epsilon(0.001));
}

TEST_CASE("a bar without an end stops 18 short of the plot, and dots run on to its edge") {
  const drawn::Bench bench;
  const layout::Frame frame = set(with({"Plates", 0, 1942, End::none, End::hard}), bench);
  const auto bars = filled_with(frame, bench.style.bar);
  CHECK(bars.at(0).box.left == doctest::Approx(kLeft + 18));
  CHECK(bars.at(0).box.right == doctest::Approx(at(1942)));
  const auto dots = dots_in(frame);
  REQUIRE(dots.size() == 1);
  CHECK(dots[0].left == doctest::Approx(kLeft));
  CHECK(dots[0].right == doctest::Approx(kLeft + 18));
}

TEST_CASE("the axis covers every end in whole decades, and more where dots need room") {
  const drawn::Bench bench;
  DatingChart chart;
  chart.marks = {{"a", 1923, 1957, End::hard, End::hard}};
  const layout::Frame covered = set(chart, bench);
  CHECK(drawn::find(covered, bench.fonts, "1920"));
  CHECK(drawn::find(covered, bench.fonts, "1960"));
  CHECK_FALSE(drawn::find(covered, bench.fonts, "1915"));
  CHECK_FALSE(drawn::find(covered, bench.fonts, "1965"));
  chart.marks.push_back({"b", 0, 1921, End::none, End::hard});
  CHECK(drawn::find(set(chart, bench), bench.fonts, "1910"));
}

TEST_CASE("the window is shaded from the first day of its first year to the last of its last") {
  const drawn::Bench bench;
  DatingChart chart = with({"Patent", 1934, 0, End::hard, End::none});
  chart.window = DatingChart::Range{1934, 1938, "the window\n1934 to 1938"};
  const layout::Frame frame = set(chart, bench);
  const auto tints = filled_with(frame, bench.style.tint);
  REQUIRE(tints.size() == 1);
  CHECK(tints[0].box.left == doctest::Approx(at(1934)));
  CHECK(tints[0].box.right == doctest::Approx(at(1939)));
  // Ink edges, for a copier that loses the tint.
  int edges = 0;
  for (const Shape& shape : drawn::shapes_in(frame)) {
    const bool edge = shape.path->stroked && shape.box.top == doctest::Approx(tints[0].box.top) &&
                      shape.box.height() == doctest::Approx(tints[0].box.height());
    if (edge) ++edges;
  }
  CHECK(edges == 2);
  const auto label = drawn::find(frame, bench.fonts, "the window");
  REQUIRE(label);
  CHECK(label->box.middle() == doctest::Approx((at(1934) + at(1939)) / 2).epsilon(0.001));
  CHECK(label->box.foot < tints[0].box.top);
  // The bars are drawn over it.
  const auto* first = std::get_if<layout::PathItem>(&frame.items.at(2));
  REQUIRE(first != nullptr);
  CHECK(first->fill == bench.style.tint);
}

TEST_CASE("a mark left out is an open bar below the dashed line, its reason in italic") {
  const drawn::Bench bench;
  DatingChart chart = with({"Patent", 1934, 0, End::hard, End::none});
  chart.marks.insert(chart.marks.begin(),
                     {"Knob", 1950, 0, End::hard, End::none, "left out: replaced"});
  const layout::Frame frame = set(chart, bench);
  double line = 0;
  for (const Shape& shape : drawn::shapes_in(frame)) {
    const auto& dashes = shape.path->stroke.dashes;
    if (dashes.size() == 2 && dashes[0] == points(3)) line = shape.box.top;
  }
  REQUIRE(line > 0);
  const auto knob = drawn::find(frame, bench.fonts, "Knob");
  const auto patent = drawn::find(frame, bench.fonts, "Patent");
  const auto reason = drawn::find(frame, bench.fonts, "left out");
  REQUIRE(knob);
  REQUIRE(patent);
  REQUIRE(reason);
  CHECK(knob->box.top > line);
  CHECK(patent->box.foot < line);
  CHECK(reason->face == bench.fonts.face("sans-italic"));
  CHECK(reason->baseline == doctest::Approx(knob->baseline));
  CHECK(reason->box.right < at(1950));
  bool open = false;
  for (const Shape& shape : drawn::shapes_in(frame)) {
    open = open || (shape.path->stroked && shape.path->filled &&
                    shape.box.left == doctest::Approx(at(1950)));
  }
  CHECK(open);
}

TEST_CASE("a reason that would cross the window's edges goes under the mark's name") {
  const drawn::Bench bench;
  DatingChart chart = with({"Patent", 1934, 0, End::hard, End::none});
  chart.marks.push_back({"Knob", 1950, 0, End::hard, End::none,
                         "left out: it came long after the reel had been made and sold"});
  chart.window = DatingChart::Range{1934, 1938, "window"};
  const layout::Frame frame = set(chart, bench);
  const auto reason = drawn::find(frame, bench.fonts, "left out");
  REQUIRE(reason);
  CHECK(reason->box.right <= 156);
}

TEST_CASE("profile columns stand on the axis, the highest 52 less a tenth, clear of each other") {
  const drawn::Bench bench;
  DatingChart chart = with({"Patent", 1934, 0, End::hard, End::none});
  chart.profile = {{1936, 0.2}, {1937, 0.4}};
  const layout::Frame frame = set(chart, bench);
  std::vector<drawn::Box> columns;
  for (const Shape& shape : filled_with(frame, bench.style.ink)) {
    if (std::abs(shape.box.width() - (at(1937) - at(1936) - 1.8)) < 0.01) {
      columns.push_back(shape.box);
    }
  }
  REQUIRE(columns.size() == 2);
  CHECK(columns[1].height() == doctest::Approx(52 / 1.1).epsilon(0.001));
  CHECK(columns[0].height() == doctest::Approx(26 / 1.1).epsilon(0.001));
  CHECK(columns[0].left == doctest::Approx(at(1936) + 0.9));
  CHECK(columns[0].foot == doctest::Approx(columns[1].foot));
}

TEST_CASE("when no year fits there is no shading, and the words say which mark must go") {
  const drawn::Bench bench;
  DatingChart chart = with({"Patent", 1934, 0, End::hard, End::none});
  chart.conflict = "no year fits all of these; the knob must go";
  const layout::Frame frame = set(chart, bench);
  CHECK(filled_with(frame, bench.style.tint).empty());
  CHECK(drawn::find(frame, bench.fonts, "no year fits"));
}

TEST_CASE("the key explains the ends that occur and no others") {
  const drawn::Bench bench;
  DatingChart chart = with({"Patent", 1934, 0, End::hard, End::none});
  chart.key = {"hard end", "soft end", "no end known", "left out"};
  const layout::Frame frame = set(chart, bench);
  CHECK(drawn::find(frame, bench.fonts, "hard end"));
  CHECK(drawn::find(frame, bench.fonts, "no end known"));
  CHECK_FALSE(drawn::find(frame, bench.fonts, "soft end"));
  CHECK_FALSE(drawn::find(frame, bench.fonts, "left out"));
}

TEST_CASE("years rise along the axis and never touch, however long it is") {
  const drawn::Bench bench;
  for (const double span : {3.0, 30.0, 75.0, 140.0, 400.0, 1900.0}) {
    DatingChart chart;
    chart.marks = {{"x", 2000 - span, 2000, End::hard, End::hard}};
    const layout::Frame frame = set(chart, bench);
    double right = -1;
    int before = -1;
    int count = 0;
    for (const drawn::Words& words : drawn::words_in(frame, bench.fonts)) {
      if (words.text == "x") continue;
      const int year = std::atoi(words.text.c_str());
      CHECK(year > before);
      CHECK(words.box.left > right + 1);
      before = year;
      right = words.box.right;
      ++count;
    }
    CHECK(count >= 2);
  }
}

DatingChart any_chart(std::mt19937& random, unsigned marks) {
  constexpr std::array<End, 3> kEnds = {End::hard, End::soft, End::none};
  const auto below = [&](unsigned n) { return static_cast<unsigned>(random() % n); };
  DatingChart chart;
  for (unsigned i = 0; i < marks; ++i) {
    const double first = 1880 + below(90);
    chart.marks.push_back({drawn::some_words(random, 70), first, first + below(30),
                           kEnds.at(below(3)), kEnds.at(below(3)),
                           below(4) == 0 ? "r" + drawn::some_words(random, 80) : ""});
  }
  if (below(2) == 0) {
    const int from = 1900 + static_cast<int>(below(50));
    const int to = from + static_cast<int>(below(8));
    chart.window = DatingChart::Range{from, to, "the window\n" + drawn::some_words(random, 20)};
    chart.half = DatingChart::Range{from, to, drawn::some_words(random, 60)};
    chart.nine_tenths = DatingChart::Range{from, to, drawn::some_words(random, 120)};
    for (int year = from; year <= to; ++year)
      chart.profile.emplace_back(year, below(100) / 100.0);
    chart.profile_name = drawn::some_words(random, 50);
    chart.profile_note = drawn::some_words(random, 90);
  } else {
    chart.conflict = drawn::some_words(random, 150);
  }
  chart.key = {"h" + drawn::some_words(random, 60), "s" + drawn::some_words(random, 60),
               "n" + drawn::some_words(random, 60), "l" + drawn::some_words(random, 60)};
  return chart;
}

TEST_CASE("whatever the marks, forty of them too, nothing leaves the frame and no words meet") {
  const drawn::Bench bench;
  std::mt19937 random(1879);
  for (unsigned round = 0; round < 40; ++round) {
    const DatingChart chart = any_chart(random, round == 0 ? 40 : round % 9);
    for (const double width : {471.0, 309.0}) {
      const layout::Frame frame = set(chart, bench, width);
      CHECK(drawn::outside(frame, bench.fonts) == "");
      CHECK(drawn::overlapping(frame, bench.fonts) == "");
    }
  }
}

}  // namespace
}  // namespace winchbook
