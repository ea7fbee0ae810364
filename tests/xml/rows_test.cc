#include "xml/rows.h"

#include <doctest/doctest.h>

#include "xml/walk.h"

namespace winchbook::xml {
namespace {

Document parsed(const std::string& bytes) {
  auto document = Document::parse("list.xml", bytes);
  REQUIRE(document);
  return std::move(document).value();
}

}  // namespace

TEST_CASE("rows are handed over in order, with their lines and their fields") {
  const Document list = parsed(
      "<sales>\n<sale><price>12.00</price><note>a &lt; b</note></sale>\n<other/>\n<sale/></sales>");
  std::vector<Row> rows;
  for_each_row(list, "sale", [&](const Row& row) { rows.push_back(row); });
  REQUIRE(rows.size() == 2);
  CHECK(rows[0].where.line == 2);
  CHECK(rows[0]["price"] == "12.00");
  CHECK(rows[0]["note"] == "a < b");
  CHECK(rows[0]["nowhere"].empty());
  CHECK(rows[1].fields.empty());
}

TEST_CASE("a list that was written is read again as it was") {
  const std::string bytes =
      written({"editions", "urn:example:1", "edition", {{{"code", "A & B"}, {"number", "2"}}, {}}});
  CHECK(bytes.starts_with("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<editions xmlns="));
  std::vector<Row> rows;
  for_each_row(parsed(bytes), "edition", [&](const Row& row) { rows.push_back(row); });
  REQUIRE(rows.size() == 2);
  CHECK(rows[0]["code"] == "A & B");
  CHECK(rows[0]["number"] == "2");
}

TEST_CASE("every text of a document is handed over where it stands") {
  const std::string bytes = "<a one=\"1\">x<b two=\"2\">y</b>z</a>";
  std::string told;
  for_each_text(parsed(bytes), [&](const Text& text) {
    told += std::string(text.element) + "." + std::string(text.attribute) + "=" +
            std::string(text.value) + "@" + std::to_string(text.offset) + " ";
  });
  CHECK(told == "a.one=1@0 a.=x@11 b.two=2@12 b.=y@23 a.=z@28 ");
}

}  // namespace winchbook::xml
