#include <doctest/doctest.h>

#include "laid_out.h"
#include "layout/table_columns.h"

namespace winchbook::layout {
namespace {

using document::Column;
using document::Row;
using document::Table;
using laid::find;
using laid::one_chapter;
using laid::pages;
using laid::Seen;

ColumnNeed need(double least, double most, double fixed = 0) {
  return {base::points(least), base::points(most), base::points(fixed)};
}

std::vector<double> widths(std::vector<ColumnNeed> needs, double total, double gap = 0) {
  std::vector<double> all;
  for (const Length width : column_widths(std::move(needs), base::points(total), base::points(gap)))
    all.push_back(base::to_points(width));
  return all;
}

Row row(const std::vector<std::string>& cells) {
  Row made;
  for (const std::string& words : cells)
    made.cells.push_back({document::plain(words)});
  return made;
}

Table table(int rows) {
  Table made;
  made.columns.resize(2);
  made.columns[1].align = Column::Align::numbers;
  made.head.push_back(row({"Head", "Figure"}));
  for (int i = 0; i < rows; ++i)
    made.rows.push_back(row({"row " + std::to_string(100 + i), std::to_string(i * 7)}));
  return made;
}

using Widths = std::vector<double>;

}  // namespace

TEST_CASE("columns with room get all they could use and share the rest by it") {
  CHECK(widths({need(10, 20), need(10, 40)}, 90) == Widths{30, 60});
}

TEST_CASE("columns without room get what they must have and share the rest by what they lack") {
  // 30 to spare over 10 + 10; they lack 20 and 40.
  CHECK(widths({need(10, 30), need(10, 50)}, 50) == Widths{20, 30});
}

TEST_CASE("where not even that fits, the widest columns give way") {
  CHECK(widths({need(60, 60), need(10, 90)}, 45) == Widths{35, 10});
  CHECK(widths({need(60, 60), need(10, 90), need(90, 90)}, 50) == Widths{20, 10, 20});
}

TEST_CASE("fixed widths are kept, and gaps belong to all columns but the last") {
  CHECK(widths({need(1, 1, 21), need(10, 20), need(10, 20)}, 123, 6) == Widths{21, 57.652, 44.348});
  CHECK(widths({need(1, 1, 20), need(10, 20, 30)}, 60, 6) == Widths{20, 40});
  // The first ledger's columns fill the frame as they are.
  Widths ledger;
  std::vector<ColumnNeed> needs;
  for (const double fixed : {21, 105, 105, 108, 66, 51, 15}) {
    needs.push_back(need(3, 300, fixed));
    ledger.push_back(fixed);
  }
  CHECK(widths(needs, 471, 6) == ledger);
}

TEST_CASE("a row of one line is 15 high and each further line 11.25") {
  Table made = table(0);
  made.head.clear();
  made.rows = {row({"one", "1"}), row({"two\nlines", "2"}), row({"three", "3"})};
  const Pages set = pages(one_chapter({made}));
  const double first = find(set, "one").at(0).y;
  CHECK(find(set, "two").at(0).y == doctest::Approx(first + 15));
  CHECK(find(set, "three").at(0).y == doctest::Approx(first + 15 + 26.25));
}

TEST_CASE("numbers stand at the right, words at the left") {
  const Pages set = pages(one_chapter({table(3)}));
  CHECK(find(set, "row 100").at(0).x == doctest::Approx(62));
  for (const char* figure : {"0", "7", "14", "Figure"})
    CHECK(find(set, figure).at(0).right == doctest::Approx(62 + 471));
}

TEST_CASE("a long table splits between rows and repeats its head as furniture") {
  const Pages set = pages(one_chapter({table(90)}));
  REQUIRE(set.pages.size() == 3);
  const std::vector<Seen> heads = find(set, "Head");
  REQUIRE(heads.size() == 3);
  CHECK(heads[0].tag != kArtifact);
  CHECK(heads[1].tag == kArtifact);
  CHECK(heads[2].tag == kArtifact);
  CHECK(find(set, "row ").size() == 90);
  for (const Seen& one : find(set, "row "))
    CHECK(one.y < 84 + 660);
  CHECK(std::count_if(set.tags.begin(), set.tags.end(),
                      [](const Tag& tag) { return tag.type == TagType::table; }) == 1);
}

TEST_CASE("a row is never parted") {
  Table made = table(60);
  for (Row& one : made.rows)
    one.cells[0].words = document::plain("top\nmiddle\nbottom");
  const Pages set = pages(one_chapter({made}));
  const std::vector<Seen> tops = find(set, "top");
  const std::vector<Seen> bottoms = find(set, "bottom");
  REQUIRE(tops.size() == 60);
  REQUIRE(bottoms.size() == 60);
  for (std::size_t i = 0; i < tops.size(); ++i)
    CHECK(tops[i].page == bottoms[i].page);
}

TEST_CASE("a row higher than a page goes on overleaf with all of its words") {
  Table made = table(1);
  std::string words = "line";
  for (int i = 0; i < 120; ++i)
    words += "\nline";
  made.rows[0].cells[0].words = document::plain(words);
  const Pages set = pages(one_chapter({made}));
  CHECK(find(set, "line").size() == 121);
  for (const Seen& one : find(set, "line"))
    CHECK(one.y <= 84 + 660);
}

TEST_CASE("head and title stay with the first two rows, and the key with the last") {
  Table made = table(8);
  made.title = "Title of the table";
  made.below = document::plain("Key");
  for (int before = 28; before < 42; ++before) {
    const Pages set = pages(one_chapter({laid::lines(before, 'x'), made}));
    const int title = find(set, "Title of").at(0).page;
    CHECK(find(set, "row 100").at(0).page == title);
    CHECK(find(set, "row 101").at(0).page == title);
    CHECK(find(set, "row 107").at(0).page == find(set, "Key").at(0).page);
    CHECK(find(set, "row 106").at(0).page == find(set, "Key").at(0).page);
  }
}

TEST_CASE("grouped heads span their columns, and structure says so") {
  Table made = table(2);
  made.columns.assign(3, Column{});
  made.columns[0].row_name = true;
  Row group;
  group.cells = {{{}, 1}, {document::plain("Both of them"), 2}};
  made.head = {group, row({"", "one", "two"})};
  made.rows = {row({"name", "x", "y"})};
  const Pages set = pages(one_chapter({made}));
  CHECK(find(set, "Both").at(0).x == doctest::Approx(find(set, "one").at(0).x));
  int spanning = 0;
  int row_names = 0;
  for (const Tag& tag : set.tags) {
    spanning += tag.column_span == 2 ? 1 : 0;
    row_names += tag.row_scope ? 1 : 0;
  }
  CHECK(spanning == 1);
  CHECK(row_names == 1);
}

TEST_CASE("the bench's tables have dashed rules, the maker's solid ones") {
  for (const bool dashed : {false, true}) {
    Table made = table(3);
    made.dashed = dashed;
    int rules = 0;
    const Pages drawn = pages(one_chapter({made}));
    for (const Item& item : drawn.pages[0].items) {
      const auto* path = std::get_if<PathItem>(&item);
      if (path == nullptr || !path->stroked) continue;
      ++rules;
      CHECK(path->stroke.dashes.empty() != dashed);
    }
    CHECK(rules == 4);
  }
}

}  // namespace winchbook::layout
