#include "knowledge/sales.h"

#include "knowledge/typed_file.h"

namespace {

using namespace winchbook::knowledge;
namespace base = winchbook::base;

SalesFile held_against(const TypedFile& file) {
  return {file.path(), *base::parse_day("2026-01-01"),
          [](std::string_view code) { return code == "GBP"; }};
}

bool any(std::string_view /*maker*/, std::string_view /*model*/) {
  return true;
}

const std::string kHeader = "date,price,currency,basis,maker,model,working,originality,box\n";

}  // namespace

TEST_CASE("a sale is the same whether its file is CSV or XML") {
  const TypedFile csv("sales_test.csv",
                      kHeader + "2025-09,210.00,GBP,premium,A,B,With care,85,yes\n");
  const TypedFile xml("sales_test.xml",
                      "<sales xmlns=\"urn:winchbook:sales:1\" version=\"1\"><sale>"
                      "<date>2025-09</date><price>210.00</price><currency>GBP</currency>"
                      "<basis>premium</basis><maker>A</maker><model>B</model>"
                      "<working>With care</working><originality>85</originality><box>yes</box>"
                      "</sale></sales>");
  for (const TypedFile* file : {&csv, &xml}) {
    const auto read = read_sales(project(), held_against(*file), any, 10);
    REQUIRE(read);
    REQUIRE(read->sales.size() == 1);
    const Sale& sale = read->sales.front();
    CHECK(sale.date.text() == "2025-09");
    CHECK(sale.price.amount == *base::Decimal::parse("210.00"));
    CHECK(sale.basis == Basis::premium);
    CHECK(sale.state[Trait::working] == 1);
    CHECK(sale.state[Trait::originality] == 1.5);
    CHECK(sale.state[Trait::box] == 0);
    CHECK_FALSE(sale.state[Trait::surface]);
  }
}

TEST_CASE("rows that are not wanted are passed over, faults and all") {
  const TypedFile file("sales_test_wanted.csv", kHeader +
                                                    "2025-09,none,EUR,gift,A,C,,,\n"
                                                    "2025-09,210.00,GBP,hammer,A,B,,,\n");
  const auto read = read_sales(
      project(), held_against(file),
      [](std::string_view, std::string_view model) { return model == "B"; }, 10);
  REQUIRE(read);
  CHECK(read->sales.size() == 1);
  CHECK(read->sales.front().line == 3);
  const auto all = read_sales(project(), held_against(file), any, 10);
  REQUIRE_FALSE(all);
  CHECK(all.faults().size() == 3);
}

TEST_CASE("of more sales than are kept the newest stay, in the file's order") {
  const TypedFile file("sales_test_newest.csv", kHeader +
                                                    "2025-03,3.00,GBP,hammer,A,B,,,\n"
                                                    "2025-01,1.00,GBP,hammer,A,B,,,\n"
                                                    "2025-02,2.00,GBP,hammer,A,B,,,\n");
  const auto read = read_sales(project(), held_against(file), any, 2);
  REQUIRE(read);
  CHECK(read->older == 1);
  REQUIRE(read->sales.size() == 2);
  CHECK(read->sales[0].line == 2);
  CHECK(read->sales[1].line == 4);
}

TEST_CASE("a sale in a day to come is a fault, and after a hundred faults they are counted") {
  std::string rows = kHeader + "2027-01-01,1.00,GBP,hammer,A,B,,,\n";
  for (int i = 0; i < 120; ++i)
    rows += "2025-01-01,none,GBP,hammer,A,B,,,\n";
  const TypedFile file("sales_test_faults.csv", rows);
  const auto faults = each_sale(project(), held_against(file), any, [](const Sale&) {});
  REQUIRE(faults.size() == 101);
  CHECK(faults.front().rule == "sale-future");
  CHECK(faults.back().message == "and 21 more");
}
