#include "layout/set_cover.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "layout/drawn_page.h"

namespace winchbook {
namespace {

using document::Cover;
using drawn::points;
using drawn::to_points;

constexpr double kA4 = 660;
constexpr double kLetter = 615;

Cover skerry() {
  Cover cover;
  cover.eyebrow = "Keepsake";
  cover.name = "Gus's Skerry";
  cover.stand_first = {"A sea reel by Harroway,", "bought new in 1948,", "back at work in 2026."};
  cover.picture = document::Figure{{"hero", 1600, 1200, "The reel from its tail side"}};
  cover.foot_left = {"Edition 1", "19 June 2026"};
  cover.foot_right = {"For Nell Merrow.", "Written at the Lantern Bench."};
  return cover;
}

/// A name of so many words of eight letters.
std::string name_of(int words) {
  std::string name = "Ferryman";
  for (int i = 1; i < words; ++i)
    name += " Ferryman";
  return name;
}

layout::Frame set(const Cover& cover, const drawn::Bench& bench, double height = kA4) {
  return layout::set_cover(cover, points(height), layout::kArtifact, bench.setting);
}

drawn::Box picture_in(const layout::Frame& frame) {
  drawn::Box box;
  for (const layout::Item& item : frame.items) {
    if (const auto* image = std::get_if<layout::ImageItem>(&item)) {
      box.add(to_points(image->box.x), to_points(image->box.y));
      box.add(to_points(image->box.x + image->box.width),
              to_points(image->box.y + image->box.height));
    }
  }
  return box;
}

/// Tops of the rules, highest first.
std::vector<double> rules_in(const layout::Frame& frame) {
  std::vector<double> tops;
  for (const drawn::Shape& shape : drawn::shapes_in(frame)) {
    if (shape.path->filled && shape.box.height() < 1) tops.push_back(shape.box.top);
  }
  std::sort(tops.begin(), tops.end());
  return tops;
}

double size_of(const layout::Frame& frame, const drawn::Bench& bench, const std::string& words) {
  return drawn::find(frame, bench.fonts, words).value().size;
}

TEST_CASE("the picture stands whole at the top, 471 by 375 at most, the name 30 under it") {
  const drawn::Bench bench;
  const layout::Frame wide = set(skerry(), bench);
  CHECK(picture_in(wide).width() == doctest::Approx(471));
  CHECK(picture_in(wide).height() == doctest::Approx(471 * 0.75));
  Cover tall = skerry();
  tall.picture->photograph.height = 1600;
  const layout::Frame frame = set(tall, bench);
  CHECK(picture_in(frame).height() == doctest::Approx(375));
  CHECK(picture_in(frame).width() == doctest::Approx(375));
  CHECK(picture_in(frame).top == doctest::Approx(0));
  // The fake face of 44 points in a line of 45 has its baseline 35.7 down.
  const auto name = drawn::find(frame, bench.fonts, "Gus");
  REQUIRE(name);
  CHECK(name->baseline == doctest::Approx(375 + 30 + 35.7));
  CHECK(name->box.left == doctest::Approx(162));
  CHECK(drawn::find(frame, bench.fonts, "Keepsake")->baseline == doctest::Approx(name->baseline));
}

TEST_CASE("foot rules stand over the foot's words, at the foot of the frame") {
  const drawn::Bench bench;
  const layout::Frame frame = set(skerry(), bench);
  CHECK(to_points(frame.height) == doctest::Approx(kA4));
  const auto rules = rules_in(frame);
  REQUIRE(rules.size() == 2);
  CHECK(rules[0] == doctest::Approx(rules[1]));
  CHECK(rules[0] == doctest::Approx(kA4 - 0.75 - 0.75 - 7.5 - 22.5));
  CHECK(drawn::find(frame, bench.fonts, "Edition")->box.top > rules[0]);
  CHECK(drawn::find(frame, bench.fonts, "For Nell")->box.left == doctest::Approx(162));
  CHECK(drawn::outside(frame, bench.fonts) == "");
}

TEST_CASE("a name takes the next smaller size after three lines, and goes on at the last") {
  const drawn::Bench bench;
  // A line of 309 points holds 14 characters of 44 points (tracked), 18 of 34 and 23 of 26.
  const auto size = [&](int words) {
    Cover cover = skerry();
    cover.name = name_of(words);
    return size_of(set(cover, bench), bench, "Ferryman");
  };
  CHECK(size(1) == doctest::Approx(44));
  CHECK(size(3) == doctest::Approx(44));
  CHECK(size(4) == doctest::Approx(34));
  CHECK(size(6) == doctest::Approx(34));
  CHECK(size(7) == doctest::Approx(26));
  CHECK(size(40) == doctest::Approx(26));
}

TEST_CASE("a long name shrinks the picture by whole lines, 30 clear above the foot, none cut") {
  const drawn::Bench bench;
  double shortest = 1000;
  for (const int words : {1, 3, 4, 6, 8, 12, 16, 24}) {
    Cover cover = skerry();
    cover.picture->photograph.height = 1600;
    cover.name = name_of(words);
    const layout::Frame frame = set(cover, bench, kLetter);
    const double height = picture_in(frame).height();
    CHECK(height <= 375);
    CHECK(std::abs(std::remainder(375 - height, 15)) < 0.01);
    shortest = std::min(shortest, height);
    CHECK(drawn::outside(frame, bench.fonts) == "");
    const auto last = drawn::find(frame, bench.fonts, "back at work");
    REQUIRE(last);
    CHECK(rules_in(frame)[0] - last->box.foot >= 30);
    int names = 0;
    for (const drawn::Words& line : drawn::words_in(frame, bench.fonts)) {
      for (std::size_t at = line.text.find("Ferryman"); at != std::string::npos;
           at = line.text.find("Ferryman", at + 1)) {
        ++names;
      }
    }
    CHECK(names == words);
  }
  CHECK(shortest < 300);
}

TEST_CASE("a picture of too few pixels is set smaller, over the name") {
  const drawn::Bench bench;
  Cover cover = skerry();
  // 471 points are 6.54 inches: 982 pixels at 150 an inch.
  cover.picture->photograph.width = 982;
  cover.picture->photograph.height = 600;
  CHECK(picture_in(set(cover, bench)).width() == doctest::Approx(471));
  cover.picture->photograph.width = 981;
  const drawn::Box smaller = picture_in(set(cover, bench));
  CHECK(smaller.width() == doctest::Approx(309));
  CHECK(smaller.left == doctest::Approx(162));
  cover.picture->photograph.width = 300;
  cover.picture->photograph.height = 200;
  CHECK(picture_in(set(cover, bench)).width() == doctest::Approx(147));
}

TEST_CASE("without a photograph the marks as read stand between two rules in its place") {
  const drawn::Bench bench;
  Cover cover = skerry();
  cover.picture.reset();
  cover.marks_as_read = {"HARROWAY REEL", "SKERRY", "No. 40"};
  cover.no_picture_note = "As read on the reel.";
  const layout::Frame frame = set(cover, bench);
  const auto rules = rules_in(frame);
  REQUIRE(rules.size() == 4);
  CHECK(rules[0] == doctest::Approx(0));
  CHECK(rules[1] == doctest::Approx(375 - 0.75));
  const auto first = drawn::find(frame, bench.fonts, "HARROWAY");
  const auto second = drawn::find(frame, bench.fonts, "SKERRY");
  REQUIRE(first);
  REQUIRE(second);
  CHECK(first->size == doctest::Approx(20));
  CHECK(second->baseline - first->baseline == doctest::Approx(45));
  CHECK(drawn::find(frame, bench.fonts, "As read")->baseline == doctest::Approx(first->baseline));
}

TEST_CASE("many marks stand closer, and those that would not fit are left to their chapter") {
  const drawn::Bench bench;
  Cover cover = skerry();
  cover.picture.reset();
  for (int i = 0; i < 40; ++i)
    cover.marks_as_read.push_back("MARK " + std::to_string(i));
  const layout::Frame frame = set(cover, bench);
  CHECK(drawn::outside(frame, bench.fonts) == "");
  CHECK(drawn::overlapping(frame, bench.fonts) == "");
  CHECK(drawn::find(frame, bench.fonts, "MARK 0"));
  CHECK_FALSE(drawn::find(frame, bench.fonts, "MARK 39"));
}

TEST_CASE("a thin record's cover has its picture in main, its foot beside it, and ends") {
  const drawn::Bench bench;
  Cover cover = skerry();
  cover.compact = true;
  const layout::Frame frame = set(cover, bench);
  CHECK(picture_in(frame).left == doctest::Approx(162));
  CHECK(picture_in(frame).width() <= 309);
  CHECK(picture_in(frame).height() == doctest::Approx(180));
  CHECK(size_of(frame, bench, "Gus") == doctest::Approx(34));
  const auto foot = drawn::find(frame, bench.fonts, "For Nell");
  REQUIRE(foot);
  CHECK(foot->box.right <= 147);
  CHECK(foot->box.foot < 180);
  const auto last = drawn::find(frame, bench.fonts, "back at work");
  REQUIRE(last);
  CHECK(to_points(frame.height) - last->box.foot < 18.75);
  CHECK(drawn::outside(frame, bench.fonts) == "");
  CHECK(drawn::overlapping(frame, bench.fonts) == "");
}

TEST_CASE("the cover is read as picture, eyebrow, heading, lines; rules are furniture") {
  const drawn::Bench bench;
  const layout::Frame frame = set(skerry(), bench);
  std::vector<layout::TagType> types;
  for (const layout::Tag& tag : bench.tags)
    types.push_back(tag.type);
  using layout::TagType;
  CHECK(types == std::vector<TagType>{TagType::figure, TagType::paragraph, TagType::h1,
                                      TagType::paragraph, TagType::paragraph, TagType::paragraph});
  CHECK(bench.tags[0].alternative == "The reel from its tail side");
  CHECK(drawn::find(frame, bench.fonts, "Gus")->tag == 2);
  for (const drawn::Shape& shape : drawn::shapes_in(frame)) {
    CHECK(shape.path->tag == layout::kArtifact);
  }
}

}  // namespace
}  // namespace winchbook
