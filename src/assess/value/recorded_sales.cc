#include "assess/value/recorded_sales.h"

#include <algorithm>
#include <map>
#include <utility>

namespace winchbook::assess::value {
namespace {

Basis basis_of(const record::Sale& sale) {
  switch (sale.kind) {
    case record::SaleKind::auction:
      return sale.with_premium ? Basis::premium : Basis::hammer;
    case record::SaleKind::dealer:
      return Basis::dealer;
    case record::SaleKind::asking_price:
      return Basis::asking;
    case record::SaleKind::private_sale:
    case record::SaleKind::other:
      break;
  }
  return Basis::privately;
}

}  // namespace

std::vector<Sale> recorded_sales(const record::Record& record) {
  std::vector<Sale> sales;
  if (!record.value) return sales;
  for (const record::Sale& one : record.value->sales) {
    Sale sale;
    sale.date = one.on;
    sale.price = one.price;
    sale.basis = basis_of(one);
    sale.maker = record.reel.maker.name;
    sale.model = record.reel.model;
    sale.state[Trait::box] = one.box ? 0 : 1;
    if (one.originality) {
      sale.state[Trait::originality] = (100 - one.originality->value.approximate()) / 10;
    }
    sale.notes = one.state;
    sale.source = one.source;
    if (!one.used && one.kind != record::SaleKind::asking_price) {
      sale.not_used = plain_text(record, one.excluded_because);
      if (sale.not_used.empty()) sale.not_used = "no reason given";
    }
    sales.push_back(std::move(sale));
  }
  return sales;
}

std::string most_frequent_currency(const std::vector<Sale>& sales) {
  std::map<std::string, int> counts;
  for (const Sale& sale : sales)
    ++counts[sale.price.currency];
  const auto most =
      std::max_element(counts.begin(), counts.end(),
                       [](const auto& a, const auto& b) { return a.second < b.second; });
  return most == counts.end() ? std::string() : most->first;
}

}  // namespace winchbook::assess::value
