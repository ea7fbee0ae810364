#include <doctest/doctest.h>

#include <cmath>

#include "layout/drawn_page.h"
#include "layout/laid_out.h"
#include "layout/set_labels.h"

namespace winchbook {
namespace {

using base::to_points;
using document::Label;
using document::Labels;

Label step(int number, const std::string& words) {
  Label label;
  label.number = std::to_string(number);
  label.words = {document::plain(words)};
  label.foot = "a reel";
  label.qr_payload = "WB1S 7QM4XT29 1 0" + std::to_string(number);
  label.qr_alternative = "A square code";
  return label;
}

Label bag(const std::string& name, int words) {
  Label label;
  label.name = name;
  label.words = {document::plain(laid::words(words))};
  label.foot = "a reel";
  return label;
}

std::vector<layout::Frame> rows(const Labels& labels, const drawn::Bench& bench) {
  return layout::set_labels(labels, layout::kArtifact, bench.setting);
}

TEST_CASE("labels stand two across, and each row is as high as its fuller one") {
  const drawn::Bench bench;
  Labels labels;
  labels.least_height = 90;
  labels.labels = {bag("Bag 1", 1), bag("Bag 2", 1), bag("Bag 3", 200)};
  const auto set = rows(labels, bench);
  REQUIRE(set.size() == 2);
  CHECK(to_points(set[0].width) == doctest::Approx(471));
  CHECK(to_points(set[0].height) == doctest::Approx(90));
  CHECK(to_points(set[1].height) > 200);
  const auto left = drawn::find(set[0], bench.fonts, "Bag 1");
  const auto right = drawn::find(set[0], bench.fonts, "Bag 2");
  REQUIRE(left);
  REQUIRE(right);
  CHECK(right->box.left - left->box.left == doctest::Approx(235.5));
  CHECK(left->baseline == doctest::Approx(right->baseline));
}

TEST_CASE("no word of a label leaves it, however long it is") {
  const drawn::Bench bench;
  Labels labels;
  labels.labels = {bag(laid::words(6, 20, 'b'), 60), bag(std::string(90, 'x'), 3), step(128, "y")};
  labels.labels[2].words = {document::plain(laid::words(40))};
  for (const layout::Frame& row : rows(labels, bench)) {
    for (const drawn::Words& words : drawn::words_in(row, bench.fonts)) {
      const double cell = words.box.left < 235.5 ? 0 : 235.5;
      CAPTURE(words.text);
      CHECK(words.box.left >= cell + 11.9);
      CHECK(words.box.right <= cell + 235.5 - 11.9);
      CHECK(words.box.top >= 0);
      CHECK(words.box.foot <= to_points(row.height) - 7.5);
    }
  }
}

TEST_CASE("each corner of a label is marked, so that cuts cross where two marks meet") {
  const drawn::Bench bench;
  Labels labels;
  labels.labels = {bag("Bag 1", 1)};
  const auto set = rows(labels, bench);
  REQUIRE(set.size() == 1);
  const double foot = to_points(set[0].height);
  int corners = 0;
  for (const double x : {0.0, 235.5}) {
    for (const double y : {0.0, foot}) {
      int marks = 0;
      for (const drawn::Shape& shape : drawn::shapes_in(set[0])) {
        const bool thin = std::min(shape.box.width(), shape.box.height()) < 0.4;
        const bool here =
            std::abs(shape.box.left - x) < 0.01 || std::abs(shape.box.right - x) < 0.01;
        const bool level =
            std::abs(shape.box.top - y) < 0.01 || std::abs(shape.box.foot - y) < 0.01;
        if (thin && here && level) ++marks;
      }
      CHECK(marks == 2);
      ++corners;
    }
  }
  CHECK(corners == 4);
}

TEST_CASE("a card's number is large, and gives way to its code rather than meet it") {
  const drawn::Bench bench;
  for (const int number : {7, 23, 1234}) {
    Labels labels;
    labels.labels = {step(number, "Unscrew the star.")};
    const auto set = rows(labels, bench);
    const auto digits = drawn::find(set[0], bench.fonts, std::to_string(number));
    REQUIRE(digits);
    CHECK(digits->size == doctest::Approx(number < 1000 ? 96 : 44));
    double code_left = 1e9;
    for (const drawn::Shape& shape : drawn::shapes_in(set[0])) {
      if (shape.box.width() > 60 && shape.box.height() > 60) code_left = shape.box.left;
    }
    // four modules of 3 points: the quiet zone of ISO/IEC 18004
    CHECK(digits->box.right <= code_left - 12);
    CHECK(code_left < 235.5);
  }
}

TEST_CASE("nothing stands nearer to a square code than four of its modules") {
  const drawn::Bench bench;
  Labels labels;
  Label crowded = bag(laid::words(8), 40);
  crowded.qr_payload = "WB1B 7QM4XT29 1 BAG1";
  crowded.foot = laid::words(20);
  labels.labels = {crowded, step(12, laid::words(30))};
  for (const layout::Frame& row : rows(labels, bench)) {
    for (const drawn::Shape& shape : drawn::shapes_in(row)) {
      if (shape.box.width() < 60 || shape.box.height() < 60) continue;
      const drawn::Box clear{shape.box.left - 12, shape.box.top - 12, shape.box.right + 12,
                             shape.box.foot + 12};
      for (const drawn::Words& words : drawn::words_in(row, bench.fonts)) {
        CAPTURE(words.text);
        CHECK_FALSE(words.box.meets(clear, 0.01));
      }
      CHECK(clear.top >= -0.01);
      CHECK(clear.foot <= to_points(row.height) + 0.01);
    }
  }
}

TEST_CASE("a label is an item of a list: number, name, words and foot are read in that order") {
  const drawn::Bench bench;
  Labels labels;
  Label one = step(3, "Unscrew the star.");
  one.name = "Card";
  one.ruled_lines = 2;
  one.hole = true;
  labels.labels = {one};
  (void)rows(labels, bench);
  using layout::TagType;
  std::vector<TagType> types;
  for (const layout::Tag& tag : bench.tags)
    types.push_back(tag.type);
  CHECK(types == std::vector<TagType>{TagType::list, TagType::list_item, TagType::list_body,
                                      TagType::figure, TagType::paragraph, TagType::paragraph,
                                      TagType::paragraph, TagType::paragraph});
}

document::Document copies(int lines_each) {
  document::Document document;
  document.title = "Receipt";
  document.language = "en-GB";
  document.folio.page_of = "{page} of {pages}";
  for (const char* id : {"one", "two"}) {
    document::Chapter chapter;
    chapter.id = id;
    chapter.title = "Title";
    chapter.counted_apart = true;
    chapter.blocks.emplace_back(laid::lines(lines_each));
    document::Signatures signatures;
    signatures.above = document::plain("Signed.");
    signatures.places = {{"Bench", "Ines", "Date"}, {"Owner", "Nell", "Date"}};
    chapter.blocks.emplace_back(std::move(signatures));
    document.chapters.push_back(std::move(chapter));
  }
  return document;
}

TEST_CASE("places to sign stand at the foot of their page, side by side") {
  const auto pages = laid::pages(copies(4));
  REQUIRE(pages.pages.size() == 2);
  const auto bench = laid::find(pages, "Bench");
  const auto owner = laid::find(pages, "Owner");
  REQUIRE(bench.size() == 2);
  CHECK(bench[0].x == doctest::Approx(62));
  CHECK(owner[0].x == doctest::Approx(62 + 243));
  const auto names = laid::find(pages, "Ines");
  REQUIRE(names.size() == 2);
  // the last line of the frame, which ends at 744
  CHECK(names[0].y > 744 - 11.25);
  CHECK(names[0].y < 744);
  CHECK(laid::find(pages, "Date").size() == 4);
}

TEST_CASE("each copy counts its own pages") {
  const auto one = laid::pages(copies(4));
  CHECK(laid::find(one, "1 of 1").size() == 2);
  const auto two = laid::pages(copies(50));
  REQUIRE(two.pages.size() == 4);
  const auto first = laid::find(two, "1 of 2");
  const auto second = laid::find(two, "2 of 2");
  REQUIRE(first.size() == 2);
  REQUIRE(second.size() == 2);
  CHECK(first[1].page == 2);
  CHECK(second[1].page == 3);
}

TEST_CASE("nobody signs a page on which nothing else stands") {
  // 4 lines of opening and 38 of text leave no room for the lines to sign on
  for (int count = 30; count < 42; ++count) {
    const auto pages = laid::pages(copies(count));
    const auto signed_on = laid::find(pages, "Ines").front().page;
    CAPTURE(count);
    CHECK(laid::lines_on_pages(pages, 'a')[signed_on] > 0);
  }
}

}  // namespace
}  // namespace winchbook
