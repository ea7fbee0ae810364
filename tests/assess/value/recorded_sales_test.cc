#include "assess/value/recorded_sales.h"

#include <doctest/doctest.h>

namespace winchbook::assess::value {
namespace {

record::Sale sale(record::SaleKind kind, const char* currency = "GBP") {
  record::Sale one;
  one.on = base::EdtfDate::parse("2025-05-01").value();
  one.kind = kind;
  one.price = {base::Decimal(120, 0), currency};
  return one;
}

record::Record with(std::vector<record::Sale> sales) {
  record::Record record;
  record.reel.maker.name = "Harroway Reel Works";
  record.reel.model = "Skerry No. 40";
  record.value.emplace();
  record.value->sales = std::move(sales);
  return record;
}

}  // namespace

TEST_CASE("the record's own sales are sales of its maker and model") {
  CHECK(recorded_sales(record::Record{}).empty());
  record::Sale boxed = sale(record::SaleKind::dealer);
  boxed.box = true;
  boxed.originality = base::Percent{base::Decimal(80, 0)};
  boxed.used = true;
  const auto sales = recorded_sales(with({boxed}));
  REQUIRE(sales.size() == 1);
  CHECK(sales[0].maker == "Harroway Reel Works");
  CHECK(sales[0].model == "Skerry No. 40");
  CHECK(sales[0].basis == Basis::dealer);
  CHECK(sales[0].state[Trait::box] == 0);
  CHECK(sales[0].state[Trait::originality] == 2);
  CHECK_FALSE(sales[0].state[Trait::surface]);
  CHECK(sales[0].not_used.empty());
}

TEST_CASE("at auction it matters whether the premium is in the price") {
  record::Sale hammer = sale(record::SaleKind::auction);
  record::Sale premium = hammer;
  premium.with_premium = true;
  const auto sales = recorded_sales(with({hammer, premium, sale(record::SaleKind::private_sale)}));
  CHECK(sales[0].basis == Basis::hammer);
  CHECK(sales[1].basis == Basis::premium);
  CHECK(sales[2].basis == Basis::privately);
}

TEST_CASE("a sale that the bench left out says why, an asking price is left out by what it is") {
  record::Sale left_out = sale(record::SaleKind::dealer);
  left_out.used = false;
  left_out.excluded_because = {{record::Plain{"another handle"}}};
  record::Sale silent = sale(record::SaleKind::dealer);
  silent.used = false;
  record::Sale asked = sale(record::SaleKind::asking_price);
  asked.used = false;
  const auto sales = recorded_sales(with({left_out, silent, asked}));
  CHECK(sales[0].not_used == "another handle");
  CHECK_FALSE(sales[1].not_used.empty());
  CHECK(sales[2].not_used.empty());
}

TEST_CASE("the currency is the one of most sales") {
  using record::SaleKind;
  CHECK(most_frequent_currency({}).empty());
  CHECK(most_frequent_currency(
            recorded_sales(with({sale(SaleKind::dealer, "GBP"), sale(SaleKind::dealer, "USD"),
                                 sale(SaleKind::dealer, "USD")}))) == "USD");
  CHECK(most_frequent_currency(recorded_sales(
            with({sale(SaleKind::dealer, "USD"), sale(SaleKind::dealer, "GBP")}))) == "GBP");
}

}  // namespace winchbook::assess::value
