#include "knowledge/stock.h"

#include "knowledge/typed_file.h"

namespace {

using namespace winchbook::knowledge;

}  // namespace

TEST_CASE("a washer is the same whether its stock is CSV or XML") {
  const TypedFile csv("stock_test.csv",
                      "donor,material,outside,inside,thickness,held,flats,count,unit\n"
                      "a tin,red fibre,22,8.3,1.5,sleeve,7,3,mm\n");
  const TypedFile xml("stock_test.xml",
                      "<stock xmlns=\"urn:winchbook:stock:1\" version=\"1\"><washer>"
                      "<donor>a tin</donor><material>red fibre</material><outside>22 mm</outside>"
                      "<inside>8.3 mm</inside><thickness>1.5 mm</thickness><held>sleeve</held>"
                      "<flats>7 mm</flats><count>3</count></washer></stock>");
  for (const TypedFile* file : {&csv, &xml}) {
    const auto stock = read_stock(project(), file->path());
    REQUIRE(stock);
    REQUIRE(stock->size() == 1);
    const StockWasher& washer = stock->front();
    CHECK(washer.donor == "a tin");
    CHECK(washer.material == "red fibre");
    CHECK(washer.outside == 22);
    CHECK(washer.inside == 8.3);
    CHECK(washer.thickness == 1.5);
    CHECK(washer.turns == Turns::with_sleeve);
    CHECK(washer.flats == 7);
    CHECK(washer.count == 3);
  }
}

TEST_CASE("every fault of a stock is told with its line") {
  const TypedFile file("stock_test_wrong.csv",
                       "donor,material,outside,inside,thickness\n"
                       "a tin,cork,22 mm,24 mm,1 mm\n"
                       "a tin,cork,22 mm\n"
                       ",cork,22 mm,8 mm,1 mm\n");
  const auto stock = read_stock(project(), file.path());
  REQUIRE_FALSE(stock);
  REQUIRE(stock.faults().size() == 3);
  CHECK(stock.faults()[0].where.line == 2);
  CHECK(stock.faults()[0].rule == "stock-inside");
  CHECK(stock.faults()[1].where.line == 3);
  CHECK(stock.faults()[1].rule == "table-row");
  CHECK(stock.faults()[2].message == "donor is missing");
}

TEST_CASE("a stack is typed as a list or read from a file, whose rows may end early") {
  const TypedFile file("stock_test_stack.csv",
                       "material,held,thickness\nred fibre,free,1.3 mm\nsteel,gear\n");
  for (const std::string& given :
       {std::string("red fibre free 1.3 mm, steel gear"), file.path().string()}) {
    const auto stack = read_stack(project(), given);
    REQUIRE(stack);
    REQUIRE(stack->size() == 2);
    CHECK(stack->front().material == "red fibre");
    CHECK(stack->front().turns == Turns::freely);
    CHECK(stack->front().thickness == 1.3);
    CHECK(stack->back().turns == Turns::with_gear);
    CHECK(stack->back().thickness == 0);
  }
  const auto unsaid = read_stack(project(), "leather 1 mm");
  REQUIRE_FALSE(unsaid);
  CHECK(unsaid.faults().front().message == "stack: \"leather 1 mm\" does not say how it is held");
}
