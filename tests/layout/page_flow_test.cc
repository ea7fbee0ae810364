#include <doctest/doctest.h>

#include "laid_out.h"
#include "layout/page_flow.h"

namespace winchbook::layout {
namespace {

using document::Block;
using document::Caution;
using document::Paragraph;
using document::SideNote;
using document::Subhead;
using laid::find;
using laid::lines;
using laid::lines_on_pages;
using laid::one_chapter;
using laid::pages;
using laid::Seen;

// The opening without a stand-first is 60 high: 40 of A4's 44 lines are left for text, and 43 on
// pages that carry on under their rule.
constexpr int kFirstPage = 40;

Subhead subhead(const char* words) {
  Subhead head;
  head.words = words;
  return head;
}

SideNote note(int count, char letter) {
  return {document::plain(laid::words(count, 30, letter))};
}

}  // namespace

TEST_CASE("reading text stands on the grid, 10.3 below its line as the face has it") {
  const Pages set = pages(one_chapter({lines(3)}));
  const std::vector<Seen> found = find(set, "aaaa");
  REQUIRE(found.size() == 3);
  // Fake face: (15 - 11) / 2 + 0.8 × 11 = 10.8; frame top 84, opening 60, line 15.
  CHECK(found[0].y == doctest::Approx(84 + 60 + 10.8));
  CHECK(found[1].y == doctest::Approx(84 + 75 + 10.8));
  CHECK(found[0].x == doctest::Approx(62 + 162));
}

TEST_CASE("A4 holds 44 lines and Letter 41") {
  const auto document = one_chapter({lines(100)});
  CHECK(lines_on_pages(pages(document), 'a') == std::map<int, int>{{0, 40}, {1, 43}, {2, 17}});
  CHECK(lines_on_pages(pages(document, laid::letter()), 'a') ==
        std::map<int, int>{{0, 37}, {1, 40}, {2, 23}});
}

TEST_CASE("a paragraph leaves two lines at least on either page") {
  SUBCASE("no single line at the head: the one before comes along") {
    const Pages set = pages(one_chapter({lines(kFirstPage - 5, 'x'), lines(6)}));
    CHECK(lines_on_pages(set, 'a') == std::map<int, int>{{0, 4}, {1, 2}});
  }
  SUBCASE("no single line at the foot: it goes over") {
    const Pages set = pages(one_chapter({lines(kFirstPage - 1, 'x'), lines(6)}));
    CHECK(lines_on_pages(set, 'a') == std::map<int, int>{{1, 6}});
  }
  SUBCASE("three lines are never parted") {
    const Pages set = pages(one_chapter({lines(kFirstPage - 2, 'x'), lines(3)}));
    CHECK(lines_on_pages(set, 'a') == std::map<int, int>{{1, 3}});
  }
  SUBCASE("what fits stays") {
    const Pages set = pages(one_chapter({lines(kFirstPage - 3, 'x'), lines(3)}));
    CHECK(lines_on_pages(set, 'a') == std::map<int, int>{{0, 3}});
  }
}

TEST_CASE("a subhead keeps three lines with it") {
  const auto page_of_head = [](int before, std::vector<Block> after) {
    std::vector<Block> blocks = {lines(before, 'x'), subhead("Head")};
    blocks.insert(blocks.end(), after.begin(), after.end());
    return find(pages(one_chapter(std::move(blocks))), "Head").at(0).page;
  };
  // Blank line, subhead, three lines.
  CHECK(page_of_head(kFirstPage - 5, {lines(8)}) == 0);
  CHECK(page_of_head(kFirstPage - 4, {lines(8)}) == 1);
  // One-line paragraphs after it count together.
  CHECK(page_of_head(kFirstPage - 5, {lines(1), lines(1), lines(1)}) == 0);
  CHECK(page_of_head(kFirstPage - 4, {lines(1), lines(1), lines(1)}) == 1);
}

TEST_CASE("a chapter opens in mid page only where eight lines of it fit") {
  const auto opening_page = [](int before) {
    auto document = one_chapter({lines(before, 'x')});
    document.chapters.push_back(document.chapters.front());
    document.chapters.back().id = "second";
    document.chapters.back().title = "Second";
    document.chapters.back().blocks = {lines(20)};
    return find(pages(document), "Second").at(0).page;
  };
  // 30 above, 60 for the opening, 8 lines: 14 lines of the page.
  CHECK(opening_page(kFirstPage - 14) == 0);
  CHECK(opening_page(kFirstPage - 13) == 1);
}

TEST_CASE("a ledger's edge mark stands on its pages only") {
  auto document = one_chapter({lines(2)});
  document::Chapter ledger = document.chapters.front();
  ledger.id = "ledger";
  ledger.title = "Ledger";
  ledger.ledger = document::Ledger::first;
  ledger.starts_page = true;
  ledger.blocks = {lines(50)};
  document.chapters.push_back(ledger);
  const Pages set = pages(document);
  CHECK(find(set, "Ledger").at(0).page == 1);
  const auto marks = [&](std::size_t page) {
    int count = 0;
    for (const Item& item : set.pages[page].items) {
      if (std::holds_alternative<PathItem>(item) && to_points(extent(item).x) > 62 + 471 + 20)
        ++count;
    }
    return count;
  };
  CHECK(set.pages.size() == 3);
  CHECK(marks(0) == 0);
  CHECK(marks(1) == 1);
  CHECK(marks(2) == 1);
}

TEST_CASE("a chapter carried over repeats its eyebrow as furniture") {
  auto document = one_chapter({lines(60)});
  document.chapters[0].eyebrow = "Eyebrow";
  document.chapters[0].eyebrow_continued = "Eyebrow, continued";
  const Pages set = pages(document);
  const std::vector<Seen> found = find(set, "Eyebrow");
  REQUIRE(found.size() == 2);
  CHECK(found[0].tag != kArtifact);
  CHECK(found[1].page == 1);
  CHECK(found[1].text == "Eyebrow, continued");
  CHECK(found[1].tag == kArtifact);
}

TEST_CASE("a side note stands level with its paragraph's first line") {
  Paragraph second = lines(2, 'b');
  second.beside.emplace_back(note(1, 'n'));
  const Pages set = pages(one_chapter({lines(3), second}));
  const Seen beside = find(set, "nnn").at(0);
  CHECK(beside.y == doctest::Approx(find(set, "bbbb").at(0).y));
  CHECK(beside.x == doctest::Approx(62));
}

TEST_CASE("side notes that would collide move down, in order") {
  Paragraph first = lines(1, 'a');
  first.beside.emplace_back(note(4, 'm'));
  Paragraph second = lines(1, 'b');
  second.beside.emplace_back(note(2, 'n'));
  const Pages set = pages(one_chapter({first, second}));
  const std::vector<Seen> above = find(set, "mmm");
  const std::vector<Seen> below = find(set, "nnn");
  REQUIRE(above.size() == 4);
  REQUIRE(below.size() == 2);
  CHECK(below[0].y == doctest::Approx(above[3].y + 11.25 + 7.5));
}

TEST_CASE("a side note at the foot is lifted rather than lost, or goes on overleaf") {
  Paragraph last = lines(1, 'b');
  last.beside.emplace_back(note(5, 'n'));
  const Pages lifted = pages(one_chapter({lines(kFirstPage - 1, 'x'), last}));
  CHECK(find(lifted, "nnn").at(4).page == 0);
  CHECK(find(lifted, "nnn").at(4).y < 84 + 660);

  last.beside.emplace_back(note(60, 'm'));
  const Pages over = pages(one_chapter({lines(kFirstPage - 1, 'x'), last}));
  CHECK(find(over, "mmm").size() == 60);
  for (const Seen& one : find(over, "mmm")) {
    CHECK(one.page >= 1);
    CHECK(one.y < 84 + 660);
  }
}

TEST_CASE("what reaches into the margin waits for the margin to be free") {
  Paragraph first = lines(1, 'a');
  first.beside.emplace_back(note(10, 'n'));
  Paragraph wide = lines(1, 'w');
  wide.width = document::Width::full;
  const Pages set = pages(one_chapter({first, wide}));
  CHECK(find(set, "wwww").at(0).y > find(set, "nnn").at(9).y + 10);
}

TEST_CASE("a caution stands beside its paragraph, or over it when it is the longer one") {
  const auto set_with = [](int paragraph_lines) {
    Paragraph paragraph = lines(paragraph_lines, 'a');
    paragraph.beside.emplace_back(Caution{"CAUTION", document::plain(laid::words(7, 30, 'c'))});
    return pages(one_chapter({paragraph}));
  };
  // Label and seven lines: 90; two lines of reading text are 30, and 60 may stand over.
  const Pages beside = set_with(2);
  CHECK(find(beside, "cccc").size() == 7);
  CHECK(find(beside, "CAUTION").at(0).y ==
        doctest::Approx(find(beside, "aaaa").at(0).y).epsilon(0.01));
  const Pages over = set_with(1);
  CHECK(find(over, "cccc").size() < 7);
  CHECK(find(over, "cccc").at(0).y < find(over, "aaaa").at(0).y);
}

TEST_CASE("a paragraph with a caution moves down until the two stand level") {
  std::vector<Block> blocks;
  for (const char letter : {'a', 'b'}) {
    Paragraph paragraph = lines(1, letter);
    paragraph.beside.emplace_back(
        Caution{"CAUTION", document::plain(laid::words(3, 30, letter == 'a' ? 'm' : 'n'))});
    blocks.emplace_back(paragraph);
  }
  const Pages set = pages(one_chapter(std::move(blocks)));
  const std::vector<Seen> cautions = find(set, "CAUTION");
  REQUIRE(cautions.size() == 2);
  CHECK(cautions[1].y == doctest::Approx(find(set, "bbbb").at(0).y).epsilon(0.01));
  CHECK(cautions[1].y > find(set, "mmm").at(2).y + 11);
}

TEST_CASE("every page but the cover is numbered of all") {
  auto document = one_chapter({lines(100)});
  document.folio = {"{page} of {pages}", "Name", "CODE"};
  const Pages set = pages(document);
  REQUIRE(set.pages.size() == 3);
  CHECK(find(set, "1 of 3").size() == 1);
  CHECK(find(set, "3 of 3").at(0).page == 2);
  CHECK(find(set, "3 of 3").at(0).y == doctest::Approx(84 + 660 + 35.5));
  CHECK(find(set, "CODE").at(0).right == doctest::Approx(62 + 471));

  document.cover.emplace();
  document.cover->name = "Cover";
  const Pages covered = pages(document);
  REQUIRE(covered.pages.size() == 4);
  CHECK(find(covered, "1 of 4").empty());
  CHECK(find(covered, "2 of 4").size() == 1);
}

TEST_CASE("a folio name too long for the foot is cut after a word") {
  auto document = one_chapter({lines(1)});
  document.folio = {"{page}", laid::words(30, 5, 'n'), "CODE"};
  const std::vector<Seen> found = find(pages(document), "nnnnn");
  REQUIRE(found.size() == 1);
  CHECK(found[0].text.ends_with("nnnnn…"));
  CHECK(found[0].right <= 62 + 471 - 15);
}

TEST_CASE("a long title shrinks, and is never cut") {
  const auto title_of = [](int count) {
    auto document = one_chapter({lines(1)});
    document.chapters[0].title = laid::words(count, 9, 't');
    return find(pages(document), "ttt");
  };
  // At 25 a word of 9 letters with its space is 125: two a line. At 20: three. At 16: three.
  CHECK(title_of(6).at(0).size == doctest::Approx(25));
  CHECK(title_of(7).at(0).size == doctest::Approx(20));
  const std::vector<Seen> longest = title_of(40);
  CHECK(longest.at(0).size == doctest::Approx(16));
  std::size_t letters = 0;
  for (const Seen& line : longest)
    letters += static_cast<std::size_t>(std::count(line.text.begin(), line.text.end(), 't'));
  CHECK(letters == 40 * 9);
}

TEST_CASE("openings are 60, 90 or 105 high") {
  const auto first_line = [](const std::string& stand_first) {
    auto document = one_chapter({lines(1)});
    document.chapters[0].stand_first = stand_first;
    return find(pages(document), "aaaa").at(0).y - 84 - 10.8;
  };
  CHECK(first_line("") == doctest::Approx(60));
  CHECK(first_line("One line.") == doctest::Approx(90));
  CHECK(first_line(laid::words(12, 5, 's')) == doctest::Approx(105));
}

}  // namespace winchbook::layout
