#include "layout/set_entry.h"

#include <doctest/doctest.h>

#include <cmath>
#include <random>

#include "layout/drawn_page.h"
#include "layout/set_ruled_lines.h"

namespace winchbook {
namespace {

using document::Entry;
using drawn::to_points;
using layout::TagType;

Entry pinion() {
  Entry entry;
  entry.letter = "A";
  entry.name = "Pinion";
  entry.old_part = document::Photograph{"old", 800, 600, "The worn pinion"};
  entry.new_part = document::Photograph{"new", 800, 600, "The fitted pinion"};
  entry.facts = {{"Donor", document::plain("A broken Skerry No. 30.")},
                 {"Why", document::plain("Four teeth were worn through.")},
                 {"Way back", document::plain("Fully.")}};
  return entry;
}

layout::Frame set(const Entry& entry, const drawn::Bench& bench) {
  return layout::set_entry(entry, layout::kArtifact, bench.setting);
}

std::vector<layout::Rect> pictures_in(const layout::Frame& frame) {
  std::vector<layout::Rect> all;
  for (const layout::Item& item : frame.items) {
    if (const auto* image = std::get_if<layout::ImageItem>(&item)) all.push_back(image->box);
  }
  return all;
}

TEST_CASE("an entry is 93.75 high and grows by whole units with its text") {
  const drawn::Bench bench;
  CHECK(to_points(set(pinion(), bench).height) == doctest::Approx(93.75));
  Entry longer = pinion();
  longer.facts[1].words = document::plain(std::string(600, 'x'));
  const double height = to_points(set(longer, bench).height);
  CHECK(height > 93.75);
  CHECK(std::abs(std::remainder(height, 3.75)) < 0.001);
}

TEST_CASE("old and new part stand side by side in the margin, whole, 69.75 wide") {
  const drawn::Bench bench;
  const auto pictures = pictures_in(set(pinion(), bench));
  REQUIRE(pictures.size() == 2);
  CHECK(to_points(pictures[0].x) == doctest::Approx(0));
  CHECK(to_points(pictures[1].x) == doctest::Approx(147 - 69.75));
  CHECK(pictures[0].y == pictures[1].y);
  for (const layout::Rect& box : pictures) {
    CHECK(to_points(box.width) == doctest::Approx(69.75));
    CHECK(to_points(box.height) == doctest::Approx(69.75 * 0.75).epsilon(0.001));
  }
}

TEST_CASE("letter and name share a baseline; labels stand at 162 and facts 57 further on") {
  const drawn::Bench bench;
  const layout::Frame frame = set(pinion(), bench);
  const auto letter = drawn::find(frame, bench.fonts, "A");
  const auto name = drawn::find(frame, bench.fonts, "Pinion");
  const auto label = drawn::find(frame, bench.fonts, "Why");
  const auto fact = drawn::find(frame, bench.fonts, "Four");
  REQUIRE(letter);
  REQUIRE(name);
  REQUIRE(label);
  REQUIRE(fact);
  CHECK(letter->size == doctest::Approx(22));
  CHECK(name->baseline == doctest::Approx(letter->baseline));
  CHECK(label->box.left == doctest::Approx(162));
  CHECK(fact->box.left == doctest::Approx(219));
  CHECK(label->baseline == doctest::Approx(fact->baseline));
}

TEST_CASE("a part that is not there is a dashed frame saying so, as high as its neighbour") {
  const drawn::Bench bench;
  Entry entry = pinion();
  entry.old_part.reset();
  entry.old_part_absent = "none came";
  const layout::Frame frame = set(entry, bench);
  CHECK(pictures_in(frame).size() == 1);
  std::optional<drawn::Box> dashed;
  for (const drawn::Shape& shape : drawn::shapes_in(frame)) {
    if (shape.path->steps.size() == 5 && !shape.path->stroke.dashes.empty()) dashed = shape.box;
  }
  REQUIRE(dashed);
  CHECK(dashed->width() == doctest::Approx(69.75));
  CHECK(dashed->height() == doctest::Approx(to_points(pictures_in(frame)[0].height)));
  const auto words = drawn::find(frame, bench.fonts, "none came");
  REQUIRE(words);
  CHECK(words->box.inside(*dashed));
  CHECK(words->box.middle() == doctest::Approx(dashed->middle()).epsilon(0.001));
}

TEST_CASE("without photographs and reasons there are no empty frames") {
  const drawn::Bench bench;
  Entry entry = pinion();
  entry.old_part.reset();
  entry.new_part.reset();
  const layout::Frame frame = set(entry, bench);
  CHECK(pictures_in(frame).empty());
  CHECK(drawn::shapes_in(frame).size() == 1);  // the rule above it
}

TEST_CASE("an entry is read as heading, pictures with words for them, and a list of facts") {
  const drawn::Bench bench;
  Entry entry = pinion();
  entry.facts.resize(1);
  const layout::Frame frame = set(entry, bench);
  std::vector<TagType> types;
  for (const layout::Tag& tag : bench.tags)
    types.push_back(tag.type);
  CHECK(types == std::vector<TagType>{TagType::h3, TagType::figure, TagType::figure, TagType::list,
                                      TagType::list_item, TagType::label, TagType::list_body});
  CHECK(bench.tags[1].alternative == "The worn pinion");
  CHECK(bench.tags[4].parent == 3);
  CHECK(bench.tags[5].parent == 4);
  CHECK(bench.tags[6].parent == 4);
  CHECK(drawn::find(frame, bench.fonts, "Donor")->tag == 5);
}

TEST_CASE("whatever the entry says, it stays in its frame and no words meet") {
  const drawn::Bench bench;
  std::mt19937 random(40);
  for (int round = 0; round < 60; ++round) {
    Entry entry = pinion();
    entry.letter = round % 5 == 0 ? "AA" : "B";
    entry.name = drawn::some_words(random, 90);
    if (random() % 2 == 0) entry.old_part.reset();
    if (random() % 2 == 0) entry.new_part.reset();
    if (random() % 2 == 0) entry.old_part_absent = drawn::some_words(random, 30);
    if (entry.new_part && random() % 2 == 0) entry.new_part->height = 900;
    entry.facts.clear();
    for (unsigned i = 0; i < random() % 8; ++i) {
      entry.facts.push_back(
          {drawn::some_words(random, 30), document::plain(drawn::some_words(random, 300))});
    }
    const layout::Frame frame = set(entry, bench);
    CHECK(drawn::outside(frame, bench.fonts) == "");
    CHECK(drawn::overlapping(frame, bench.fonts) == "");
  }
}

TEST_CASE("ruled lines stand 22.5 apart in main, the label before the first of them") {
  const drawn::Bench bench;
  const auto frames =
      layout::set_ruled_lines({{"Next owner", "Service"}, 2}, layout::kArtifact, bench.setting);
  REQUIRE(frames.size() == 2);
  CHECK(to_points(frames[0].height) == doctest::Approx(45));
  const auto rules = drawn::shapes_in(frames[0]);
  REQUIRE(rules.size() == 2);
  CHECK(rules[0].box.left == doctest::Approx(162));
  CHECK(rules[0].box.right == doctest::Approx(471));
  CHECK(rules[1].box.top - rules[0].box.top == doctest::Approx(22.5));
  const auto label = drawn::find(frames[1], bench.fonts, "Service");
  REQUIRE(label);
  CHECK(label->box.left == doctest::Approx(0));
  CHECK(label->baseline < rules[0].box.top);
  CHECK(label->baseline > rules[0].box.top - 4);
}

}  // namespace
}  // namespace winchbook
