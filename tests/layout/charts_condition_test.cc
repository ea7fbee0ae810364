#include <doctest/doctest.h>

#include <cmath>
#include <random>

#include "layout/drawn_page.h"

namespace winchbook {
namespace {

using document::ConditionChart;
using document::Sign;
using drawn::points;
using drawn::Shape;

constexpr double kLeft = 162;
constexpr double kRight = 467.25;

ConditionChart::Axis surface(std::vector<ConditionChart::Mark> marks) {
  return {"Surface",
          "share of the maker's finish surviving",
          {"little", "over a quarter", "over half", "the most"},
          std::move(marks)};
}

layout::Frame set(const ConditionChart& chart, const drawn::Bench& bench, double width = 471) {
  return layout::set_chart(chart, points(width), 1, bench.setting);
}

/// The axis's own line: the only stroke 0.75 thick.
drawn::Box axis_in(const layout::Frame& frame) {
  for (const Shape& shape : drawn::shapes_in(frame)) {
    if (shape.path->stroked && shape.path->stroke.width == points(0.75)) return shape.box;
  }
  return {};
}

/// Rings are stroked circles, discs are filled ones.
std::vector<drawn::Box> circles_in(const layout::Frame& frame, bool rings) {
  std::vector<drawn::Box> all;
  for (const Shape& shape : drawn::shapes_in(frame)) {
    if (shape.path->steps.size() == 6 && shape.path->stroked == rings) all.push_back(shape.box);
  }
  return all;
}

double middle_height(const drawn::Box& box) {
  return (box.top + box.foot) / 2;
}

TEST_CASE("a ring stands 8 above the line and a disc 8 below, each at its share") {
  const drawn::Bench bench;
  const layout::Frame frame = set(
      {{surface({{Sign::found, {25, 25}, "three"}, {Sign::left, {50, 50}, "one"}})}, {}}, bench);
  const drawn::Box line = axis_in(frame);
  const double y = middle_height(line);
  CHECK(line.left == doctest::Approx(kLeft));
  CHECK(line.right == doctest::Approx(kRight));
  const auto rings = circles_in(frame, true);
  const auto discs = circles_in(frame, false);
  REQUIRE(rings.size() == 1);
  REQUIRE(discs.size() == 1);
  CHECK(rings[0].middle() == doctest::Approx(kLeft + (kRight - kLeft) * 0.25));
  CHECK(discs[0].middle() == doctest::Approx(kLeft + (kRight - kLeft) * 0.5));
  CHECK(middle_height(rings[0]) == doctest::Approx(y - 8));
  CHECK(middle_height(discs[0]) == doctest::Approx(y + 8));
}

TEST_CASE("the words stand at equal steps under their own line, the worst at the left") {
  const drawn::Bench bench;
  ConditionChart chart{{surface({}), surface({})}, {}};
  chart.axes[1].words = {"unsafe", "weakened", "marked", "sound"};
  const layout::Frame frame = set(chart, bench);
  const double step = (kRight - kLeft) / 4;
  double at = kLeft + step / 2;
  for (const char* word : {"little", "over a quarter", "over half", "the most"}) {
    const auto found = drawn::find(frame, bench.fonts, word);
    REQUIRE(found);
    CHECK(found->box.middle() == doctest::Approx(at).epsilon(0.001));
    at += step;
  }
  const auto first = drawn::find(frame, bench.fonts, "little");
  const auto second = drawn::find(frame, bench.fonts, "unsafe");
  REQUIRE(second);
  CHECK(second->box.middle() == doctest::Approx(first->box.middle()).epsilon(0.001));
  // 11/3 of the chart's leading
  CHECK(second->baseline - first->baseline == doctest::Approx(41.25));
}

TEST_CASE("a range runs through its mark with ends, and an exact figure has none") {
  const drawn::Bench bench;
  const auto strokes = [&](double low, double high) {
    const layout::Frame frame = set({{surface({{Sign::left, {low, high}, "x"}})}, {}}, bench);
    std::vector<drawn::Box> all;
    for (const Shape& shape : drawn::shapes_in(frame)) {
      if (shape.path->stroked && shape.path->steps.size() == 2 &&
          shape.path->stroke.width == points(1)) {
        all.push_back(shape.box);
      }
    }
    return all;
  };
  CHECK(strokes(50, 50).empty());
  const auto range = strokes(20, 60);
  REQUIRE(range.size() == 3);
  CHECK(range[0].left == doctest::Approx(kLeft + (kRight - kLeft) * 0.2));
  CHECK(range[0].right == doctest::Approx(kLeft + (kRight - kLeft) * 0.6));
  CHECK(range[1].height() == doctest::Approx(6));
  CHECK(range[1].left == doctest::Approx(range[0].left));
  CHECK(range[2].right == doctest::Approx(range[0].right));
}

TEST_CASE("a fact stands right of its mark, and left of it near the right end") {
  const drawn::Bench bench;
  const std::string fact = "34 of 34 pieces";
  const auto left_part = set({{surface({{Sign::left, {10, 10}, fact}})}, {}}, bench);
  const auto right_part = set({{surface({{Sign::left, {100, 100}, fact}})}, {}}, bench);
  const auto words = drawn::find(left_part, bench.fonts, "34");
  const auto flipped = drawn::find(right_part, bench.fonts, "34");
  REQUIRE(words);
  REQUIRE(flipped);
  CHECK(words->box.left > circles_in(left_part, false)[0].right);
  CHECK(flipped->box.right < circles_in(right_part, false)[0].left);
}

TEST_CASE("two facts of one side that would meet stand on two levels") {
  const drawn::Bench bench;
  const layout::Frame frame = set({{surface({{Sign::found, {50, 50}, "at the first visit"},
                                             {Sign::found, {55, 55}, "at the second visit"},
                                             {Sign::found, {5, 5}, "far"}})},
                                   {}},
                                  bench);
  const auto first = drawn::find(frame, bench.fonts, "at the first");
  const auto second = drawn::find(frame, bench.fonts, "at the second");
  const auto far = drawn::find(frame, bench.fonts, "far");
  REQUIRE(first);
  REQUIRE(second);
  REQUIRE(far);
  CHECK(first->baseline - second->baseline == doctest::Approx(11.25));
  CHECK(far->baseline == doctest::Approx(first->baseline));
}

/// A word or a mark that touches another mark, as a sentence.
std::string collision(const layout::Frame& frame, const text::FontMetrics& fonts) {
  std::vector<drawn::Box> marks = circles_in(frame, true);
  const std::vector<drawn::Box> discs = circles_in(frame, false);
  marks.insert(marks.end(), discs.begin(), discs.end());
  for (std::size_t i = 0; i < marks.size(); ++i) {
    for (std::size_t j = i + 1; j < marks.size(); ++j) {
      if (marks[i].meets(marks[j])) return "two marks meet";
    }
    for (const drawn::Words& words : drawn::words_in(frame, fonts)) {
      if (marks[i].meets(words.box)) return words.text + " meets a mark";
    }
  }
  return {};
}

TEST_CASE("whatever the record says, facts, words and marks keep apart and inside") {
  const drawn::Bench bench;
  std::mt19937 random(1948);
  for (int round = 0; round < 50; ++round) {
    ConditionChart chart;
    for (unsigned a = 0; a <= random() % 4; ++a) {
      ConditionChart::Axis axis{
          drawn::some_words(random, 40), drawn::some_words(random, 90), {}, {}};
      for (unsigned w = 0; w < 4; ++w)
        axis.words.push_back(drawn::some_words(random, 18));
      for (unsigned m = 0; m < random() % 5; ++m) {
        const auto low = static_cast<unsigned>(random() % 101);
        const unsigned high =
            round % 3 == 0 ? low : low + static_cast<unsigned>(random() % (101 - low));
        axis.marks.push_back({random() % 2 == 0 ? Sign::found : Sign::left,
                              {static_cast<double>(low), static_cast<double>(high)},
                              drawn::some_words(random, 90)});
      }
      chart.axes.push_back(std::move(axis));
    }
    for (const double width : {471.0, 309.0}) {
      const layout::Frame frame = set(chart, bench, width);
      CHECK(drawn::outside(frame, bench.fonts) == "");
      CHECK(drawn::overlapping(frame, bench.fonts) == "");
      CHECK(collision(frame, bench.fonts) == "");
    }
  }
}

}  // namespace
}  // namespace winchbook
