#include <doctest/doctest.h>

#include <algorithm>
#include <vector>

#include "layout/drawn_page.h"
#include "layout/laid_out.h"

namespace winchbook {
namespace {

using base::to_points;
using document::Step;

Step step(int number, char letter, int words = 20) {
  Step one;
  one.number = std::to_string(number);
  one.what = document::plain(laid::words(words, 4, letter));
  one.facts = {{"Parts", document::plain("bolt")}, {"Tool", document::plain("hook")}};
  one.boxes = {"off", "back"};
  return one;
}

/// Outlines of 10.5 by 10.5: the boxes to tick, by page.
std::vector<layout::Rect> boxes_on(const layout::Page& page) {
  std::vector<layout::Rect> boxes;
  for (const layout::Item& item : page.items) {
    const auto* path = std::get_if<layout::PathItem>(&item);
    if (path == nullptr || !path->stroked || path->steps.size() != 5) continue;
    const double width = to_points(path->steps[1].to.x - path->steps[0].to.x);
    const double height = to_points(path->steps[2].to.y - path->steps[1].to.y);
    if (std::abs(width - 9.7) > 0.01 || std::abs(height - 9.7) > 0.01) continue;
    boxes.push_back({path->steps[0].to.x, path->steps[0].to.y, {}, {}});
  }
  return boxes;
}

TEST_CASE("a step has its number, its facts, and a box for off and for back at main's right edge") {
  const auto pages = laid::pages(laid::one_chapter({step(7, 'a')}));
  REQUIRE(pages.pages.size() == 1);
  const auto boxes = boxes_on(pages.pages[0]);
  REQUIRE(boxes.size() == 2);
  CHECK(to_points(boxes[0].x) == doctest::Approx(to_points(boxes[1].x)));
  CHECK(to_points(boxes[1].y - boxes[0].y) == doctest::Approx(15));
  const auto number = laid::find(pages, "7");
  const auto what = laid::find(pages, "aaaa");
  const auto off = laid::find(pages, "off");
  REQUIRE(number.size() == 1);
  REQUIRE(off.size() == 1);
  CHECK(number[0].y == doctest::Approx(what[0].y));
  CHECK(off[0].right < to_points(boxes[0].x));
  for (const auto& line : what)
    CHECK(line.right < off[0].x);
  CHECK(laid::find(pages, "bolt")[0].y > what.back().y);
}

TEST_CASE("a warning is level with its step and heard before it; the next step keeps clear of it") {
  Step first = step(1, 'a', 6);
  first.beside.emplace_back(document::Caution{"Spring", document::plain(laid::words(40, 4, 'w'))});
  Step second = step(2, 'b', 6);
  second.beside.emplace_back(document::Caution{"Other", document::plain(laid::words(6, 4, 'v'))});
  const auto pages = laid::pages(laid::one_chapter({first, second}));
  const auto label = laid::find(pages, "Spring");
  const auto work = laid::find(pages, "aaaa");
  REQUIRE(label.size() == 1);
  CHECK(label[0].y == doctest::Approx(work[0].y).epsilon(0.01));
  CHECK(label[0].tag < work[0].tag);
  const auto last = laid::find(pages, "wwww").back();
  const auto other = laid::find(pages, "Other");
  CHECK(other[0].y > last.y);
  CHECK(other[0].y == doctest::Approx(laid::find(pages, "bbbb")[0].y).epsilon(0.01));
}

TEST_CASE("sixty steps keep their number and order, and none is parted") {
  std::vector<document::Block> blocks;
  for (int i = 1; i <= 60; ++i)
    blocks.emplace_back(step(i, 'a', 12 + i % 30));
  const auto pages = laid::pages(laid::one_chapter(blocks));
  CHECK(pages.pages.size() > 3);
  std::size_t boxes = 0;
  for (const layout::Page& page : pages.pages) {
    const auto here = boxes_on(page);
    CHECK(here.size() % 2 == 0);
    boxes += here.size();
  }
  CHECK(boxes == 120);
  const auto lists = std::count_if(pages.tags.begin(), pages.tags.end(), [](const auto& tag) {
    return tag.type == layout::TagType::list && tag.numbered;
  });
  CHECK(lists == 1);
}

TEST_CASE("a step without a number leaves a line to write it on") {
  Step blank = step(1, 'a');
  blank.number.clear();
  const auto pages = laid::pages(laid::one_chapter({blank}));
  const auto& items = pages.pages[0].items;
  CHECK(std::any_of(items.begin(), items.end(), [](const layout::Item& item) {
    const auto* path = std::get_if<layout::PathItem>(&item);
    return path != nullptr && path->stroked && path->steps.size() == 2 &&
           std::abs(to_points(path->steps[1].to.x - path->steps[0].to.x) - 21) < 0.01;
  }));
}

TEST_CASE("rows with room for a pencil are that high, and those with more words higher") {
  document::Table table;
  table.columns = {{document::Column::Align::words, 0, true}};
  for (int words : {1, 1, 200}) {
    document::Row row;
    row.cells = {{document::plain(laid::words(words, 4, 'r'))}};
    table.rows.push_back(row);
  }
  table.least_row = 22.5;
  const auto rows = laid::find(laid::pages(laid::one_chapter({table})), "rrrr");
  REQUIRE(rows.size() > 3);
  CHECK(rows[1].y - rows[0].y == doctest::Approx(22.5));
  CHECK(rows[2].y - rows[1].y == doctest::Approx(22.5));
}

document::Halves half(char letter, int words, bool above) {
  document::Halves halves;
  halves.left = {document::Paragraph{document::plain(laid::words(words, 4, letter)),
                                     document::ParagraphManner::note}};
  halves.right = {document::Paragraph{document::plain(laid::words(3, 4, 'z')),
                                      document::ParagraphManner::note}};
  halves.above_fold = above;
  return halves;
}

TEST_CASE("a fold parts a sheet at its middle, and what is too much goes on below it") {
  for (const auto& style : {fake::style(), laid::letter()}) {
    const double middle = to_points(style.paper.height) / 2;
    const auto folded = laid::pages(
        laid::one_chapter({half('a', 30, true), document::Fold{}, half('b', 30, false)}), style);
    REQUIRE(folded.pages.size() == 1);
    for (const auto& line : laid::find(folded, "aaaa"))
      CHECK(line.y < middle - 10);
    for (const auto& line : laid::find(folded, "bbbb"))
      CHECK(line.y > middle + 10);

    const auto long_one = laid::pages(
        laid::one_chapter({half('a', 400, true), document::Fold{}, half('b', 30, false)}), style);
    bool crosses = false;
    for (const auto& line : laid::find(long_one, "aaaa")) {
      CHECK((line.y < middle - 10 || line.y > middle + 10));
      crosses = crosses || line.y > middle;
    }
    CHECK(crosses);
    CHECK(laid::find(long_one, "bbbb").front().y > laid::find(long_one, "aaaa").back().y);
  }
}

}  // namespace
}  // namespace winchbook
