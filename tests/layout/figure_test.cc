#include <doctest/doctest.h>

#include "laid_out.h"
#include "layout/set_figure.h"

namespace winchbook::layout {
namespace {

using document::Figure;
using document::Photograph;
using document::Width;
using laid::find;
using laid::one_chapter;
using laid::pages;

Photograph photograph(int width, int height) {
  Photograph made;
  made.id = "photo";
  made.width = width;
  made.height = height;
  made.alternative = "What it shows";
  return made;
}

Figure figure(int width, int height, Width where = Width::main) {
  Figure made;
  made.photograph = photograph(width, height);
  made.caption.number = 3;
  made.caption.words = document::plain("Caption");
  made.width = where;
  return made;
}

struct Box {
  double x = 0;
  double y = 0;
  double width = 0;
  double height = 0;
};

std::vector<Box> images(const Pages& set) {
  std::vector<Box> all;
  for (const Page& page : set.pages) {
    for (const Item& item : page.items) {
      const auto* image = std::get_if<ImageItem>(&item);
      if (image == nullptr) continue;
      all.push_back({to_points(image->box.x), to_points(image->box.y), to_points(image->box.width),
                     to_points(image->box.height)});
    }
  }
  return all;
}

Box size(int width, int height, Width where) {
  const Rect box = figure_box(photograph(width, height), where, fake::style());
  return {0, 0, to_points(box.width), to_points(box.height)};
}

}  // namespace

TEST_CASE("a picture is as large as its place lets the whole of it be") {
  CHECK(size(3000, 1000, Width::full).width == doctest::Approx(471));
  CHECK(size(3000, 1000, Width::full).height == doctest::Approx(157));
  CHECK(size(2400, 1800, Width::full).height == doctest::Approx(300));
  CHECK(size(2400, 1800, Width::full).width == doctest::Approx(400));
  CHECK(size(2400, 1800, Width::main).height == doctest::Approx(210));
  CHECK(size(2400, 1800, Width::main).width == doctest::Approx(280));
  CHECK(size(2400, 1200, Width::side).width == doctest::Approx(147));
}

TEST_CASE("too few pixels take the next smaller size, far too few the smallest") {
  // Full is 471 points, 6.54 inches: 150 an inch are 982 pixels, 75 are 491.
  CHECK(size(990, 330, Width::full).width == doctest::Approx(471));
  CHECK(size(970, 323, Width::full).width == doctest::Approx(309));
  CHECK(size(480, 160, Width::full).width == doctest::Approx(147));
  // Main is 4.29 inches: 644 and 322 pixels.
  CHECK(size(650, 300, Width::main).width == doctest::Approx(309));
  CHECK(size(600, 300, Width::main).width == doctest::Approx(147));
  CHECK(size(100, 50, Width::main).width == doctest::Approx(147));
}

TEST_CASE("a caption stands 3.75 under its picture, on its page") {
  for (int before = 20; before < 40; ++before) {
    const Pages set = pages(one_chapter({laid::lines(before, 'x'), figure(2400, 1800)}));
    const Box image = images(set).at(0);
    const auto caption = find(set, "3").at(0);
    // Fake face: (11.25 - 7.75) / 2 + 0.8 × 7.75 = 7.95 to the baseline.
    CHECK(caption.y == doctest::Approx(image.y + image.height + 3.75 + 7.95));
    CHECK(image.y + image.height < 84 + 660);
  }
}

TEST_CASE("a picture in main may have its caption in the margin, level with its top") {
  Figure made = figure(2400, 1800);
  made.caption_in_side = true;
  const Pages set = pages(one_chapter({laid::lines(3, 'x'), made}));
  CHECK(find(set, "3").at(0).x == doctest::Approx(62));
  CHECK(find(set, "3").at(0).y == doctest::Approx(images(set).at(0).y + 7.95));
}

TEST_CASE("a picture is made up to a quarter lower before it leaves its page") {
  // 40 lines; a picture of 210 with its caption is 225, fifteen lines, and wants one above it.
  const auto placed = [](int before) {
    return images(pages(one_chapter({laid::lines(before, 'x'), figure(2400, 1800)}))).at(0);
  };
  CHECK(placed(24).height == doctest::Approx(210));
  CHECK(placed(24).y > 84 + 400);
  CHECK(placed(25).height == doctest::Approx(195));
  CHECK(placed(25).width == doctest::Approx(260));
  CHECK(placed(27).height == doctest::Approx(165));
  CHECK(placed(28).height == doctest::Approx(210));
  CHECK(placed(28).y < 84 + 100);
}

TEST_CASE("a pair stands at equal height with both captions, and a missing half says so") {
  document::Pair pair;
  pair.found = figure(2400, 1800);
  pair.left = figure(2400, 1350);
  const std::vector<Box> both = images(pages(one_chapter({pair})));
  REQUIRE(both.size() == 2);
  CHECK(both[0].height == doctest::Approx(both[1].height));
  CHECK(both[1].width == doctest::Approx(228));
  CHECK(both[1].x == doctest::Approx(62 + 243));
  pair.found.reset();
  pair.not_photographed = "not photographed";
  const Pages set = pages(one_chapter({pair}));
  CHECK(images(set).size() == 1);
  CHECK(find(set, "not photographed").size() == 1);
}

TEST_CASE("two pictures fill the frame at equal height, on the columns where their shapes allow") {
  document::FigureRow row;
  row.figures = {figure(1470, 1500), figure(3090, 1500)};
  std::vector<Box> boxes = images(pages(one_chapter({row})));
  CHECK(boxes[0].width == doctest::Approx(147));
  CHECK(boxes[1].x == doctest::Approx(62 + 162));
  CHECK(boxes[0].height == doctest::Approx(boxes[1].height));
  row.figures = {figure(2400, 1800), figure(2400, 1800)};
  boxes = images(pages(one_chapter({row})));
  CHECK(boxes[0].width == doctest::Approx(228));
  CHECK(boxes[1].width == doctest::Approx(228));
  CHECK(boxes[0].height == doctest::Approx(171));
}

TEST_CASE("many pictures stand three across, 147 by 98 at most") {
  document::FigureRow row;
  for (int i = 0; i < 7; ++i)
    row.figures.push_back(figure(1200, 900));
  const std::vector<Box> boxes = images(pages(one_chapter({row})));
  REQUIRE(boxes.size() == 7);
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    CHECK(boxes[i].height == doctest::Approx(98));
    CHECK(boxes[i].x == doctest::Approx(62 + 162.0 * static_cast<double>(i % 3)));
  }
}

TEST_CASE("a figure knows its page and its box, and its words for those who cannot see it") {
  const Pages set = pages(one_chapter({laid::lines(39, 'x'), figure(2400, 1800)}));
  int figures = 0;
  for (const Tag& tag : set.tags) {
    if (tag.type != TagType::figure) continue;
    ++figures;
    CHECK(tag.page == 1);
    CHECK(to_points(tag.box.height) == doctest::Approx(210));
    CHECK(tag.alternative == "What it shows");
  }
  CHECK(figures == 1);
}

}  // namespace winchbook::layout
