#include "tabular/rows.h"

#include <doctest/doctest.h>

#include <sstream>

namespace {

using winchbook::tabular::Header;
using winchbook::tabular::Row;
using winchbook::tabular::RowReader;

struct Table {
  std::vector<Row> rows;
  winchbook::base::Diagnostics faults;
};

Table read(const std::string& bytes) {
  std::istringstream in(bytes);
  RowReader reader(in, "stock.csv");
  Table table;
  for (;;) {
    auto row = reader.next();
    if (!row) {
      table.faults = row.faults();
      return table;
    }
    if (!*row) return table;
    table.rows.push_back(**row);
  }
}

}  // namespace

// The examples of RFC 4180, section 2, rules 1 to 7.
TEST_CASE("RFC 4180's own examples are read") {
  CHECK(read("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n").rows.size() == 2);
  CHECK(read("aaa,bbb,ccc\r\nzzz,yyy,xxx").rows.at(1).fields.at(2) == "xxx");
  CHECK(read("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx").rows.at(0).fields.at(1) == "bbb");
  const Table lines = read("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx");
  CHECK(lines.rows.at(0).fields.at(1) == "b\r\nbb");
  CHECK(lines.rows.at(1).line == 3);
  CHECK(read("\"aaa\",\"b\"\"bb\",\"ccc\"").rows.at(0).fields.at(1) == "b\"bb");
  CHECK(read("a, b ,c").rows.at(0).fields.at(1) == " b ");
}

TEST_CASE("line ends, a byte-order mark, empty lines and empty fields are taken as they come") {
  const Table table = read(
      "\xEF\xBB\xBF"
      "a,b\n\n1,\n,2\n");
  REQUIRE(table.rows.size() == 3);
  CHECK(table.rows[0].fields.at(0) == "a");
  CHECK(table.rows[1].line == 3);
  CHECK(table.rows[1].fields == std::vector<std::string>{"1", ""});
  CHECK(table.rows[2].fields == std::vector<std::string>{"", "2"});
  CHECK(read("").rows.empty());
  CHECK(read("\n\r\n").rows.empty());
  CHECK(read("\"\"").rows.at(0).fields.at(0).empty());
}

TEST_CASE("a broken row is named with its line") {
  std::string many = "donor,material\n";
  for (int i = 2; i < 812; ++i)
    many += "a tin,cork\n";
  const Table open = read(many + "a \"tin,cork\n");
  REQUIRE(open.faults.size() == 1);
  CHECK(open.rows.size() == 811);
  CHECK(open.faults[0].where.line == 812);
  CHECK(open.faults[0].rule == "table-quote");

  CHECK(read("a,\"b\nc,d\n").faults.at(0).where.line == 1);
  CHECK(read("a\n\"b\"c\n").faults.at(0).where.line == 2);
  CHECK(read(std::string("a\0b\n", 4)).faults.at(0).rule == "table-bytes");
  CHECK(read("a\n\xff\n").faults.at(0).rule == "table-bytes");
  CHECK(read("a\n\xc0\xaf\n").faults.at(0).rule == "table-bytes");
  CHECK(read("a\n\xed\xa0\x80\n").faults.at(0).rule == "table-bytes");
  CHECK(read("\xc3\xa9,\xe2\x82\xac\n").faults.empty());
  CHECK(read(std::string(2U << 20U, 'x')).faults.at(0).rule == "table-row");
  CHECK(read("\"" + std::string(2U << 20U, 'x')).faults.at(0).rule == "table-quote");
}

TEST_CASE("columns are found by name, in any order") {
  const Row row{1, {"Price ", "date"}};
  const auto header = Header::read(row, "sales.csv", {"date"}, {"date", "price", "note"});
  REQUIRE(header);
  const Row sale{2, {" 12 ", "1999"}};
  CHECK(header->field(sale, "price") == "12");
  CHECK(header->field(sale, "date") == "1999");
  CHECK(header->field(sale, "note").empty());
  CHECK(header->field(Row{3, {"1"}}, "date").empty());
}

TEST_CASE("a missing, a strange and a doubled column are told together") {
  const Row row{1, {"price", "price", "colour"}};
  const auto header = Header::read(row, "sales.csv", {"date"}, {"date", "price"});
  REQUIRE_FALSE(header);
  CHECK(header.faults().size() == 3);
  CHECK(header.faults()[0].rule == "table-columns");
}

namespace {

/// What is taken and told of a table, line by line.
std::vector<std::string> walked(const std::string& bytes, bool whole_rows = true) {
  std::istringstream in(bytes);
  std::vector<std::string> seen;
  winchbook::tabular::each_row(
      in, "tin.csv", {"tin", {"what"}, "what, count", whole_rows},
      [&](const Header& header, const Row& row) {
        seen.push_back(std::string(header.field(row, "what")) + "=" +
                       std::string(header.field(row, "count")));
      },
      [&](const winchbook::base::Diagnostics& faults) {
        for (const auto& fault : faults)
          seen.push_back(std::to_string(fault.where.line) + ": " + fault.message);
      });
  return seen;
}

}  // namespace

TEST_CASE("a table is walked row by row, and what is wrong is told in its place") {
  using Seen = std::vector<std::string>;
  CHECK(walked("count,what\n3, cork \n4\n5,fibre\n") ==
        Seen{"cork=3", "3: this row has 1 fields, the first row names 2", "fibre=5"});
  CHECK(walked("what,count\ncork\n", false) == Seen{"cork="});
  CHECK(walked("") == Seen{"1: the tin is empty"});
  CHECK(walked("count\n3\n") == Seen{"1: column \"what\" is missing"});
}
