#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>

#include "assess/value/value.h"
#include "base/words_of_text.h"

namespace winchbook::assess::value {
namespace {

constexpr int kMostYears = 10;      // a date that says less is no date
constexpr double kNormal = 0.6745;  // makes the median deviation of a normal sample its sd
constexpr std::size_t kFewest = 5;  // below that a median says nothing of what is far

/// The price on the purpose's basis, or why there is none.
std::optional<double> paid(const Sale& sale, const knowledge::Purpose& purpose, Excluded& why) {
  const double price = sale.price.amount.approximate();
  const std::optional<double> fees =
      sale.fees ? std::optional(sale.fees->approximate()) : std::nullopt;
  switch (sale.basis) {
    case Basis::asking:
      why = Excluded::asked;
      return std::nullopt;
    case Basis::dealer:
      if (purpose.dealers) return price;
      why = Excluded::dealer;
      return std::nullopt;
    case Basis::privately:
      return price;
    case Basis::hammer:
      if (!purpose.buyer_pays) return price;
      if (fees) return price + *fees;
      break;
    case Basis::premium:
      if (purpose.buyer_pays) return price;
      if (fees) return price - *fees;
      break;
  }
  why = Excluded::premium_unknown;
  return std::nullopt;
}

/// The days a sale may have been on; empty when that is too vague.
std::optional<std::pair<base::Day, base::Day>> days(const base::EdtfDate& date) {
  const auto first = date.earliest();
  const auto last = date.latest();
  if (!first || !last || last->year - first->year >= kMostYears) return std::nullopt;
  return std::pair(*first, *last);
}

/// Brings one sale to the question, or says why it does not count.
std::optional<Comparable> brought(const Question& question, const Sale& sale,
                                  const knowledge::Prices& prices, Excluded& why) {
  if (!sale.not_used.empty()) {
    why = Excluded::by_bench;
    return std::nullopt;
  }
  Comparable one;
  one.sale = sale;
  const auto amount = paid(sale, question.purpose, why);
  if (!amount) return std::nullopt;
  one.paid = *amount;
  const auto when = days(sale.date);
  if (!when) {
    why = Excluded::undated;
    return std::nullopt;
  }
  if (when->first > question.as_of) {
    why = Excluded::after;
    return std::nullopt;
  }
  // First into the currency at the time, then along its prices: what it would have cost here.
  const auto rate =
      knowledge::exchange(prices, sale.price.currency, question.currency, when->first.year);
  if (!rate) {
    why = Excluded::no_rate;
    return std::nullopt;
  }
  one.rate = *rate;
  if (const knowledge::PriceIndex* index = find_index(prices, question.currency)) {
    const auto then = index_over(*index, when->first, std::min(when->second, question.as_of));
    const auto now = index_at(*index, question.as_of.year, question.as_of.month);
    if (!then || !now) {
      why = Excluded::no_index;
      return std::nullopt;
    }
    one.index = now->value / then->value;
    one.estimated_index = then->between || then->beyond || now->between || now->beyond;
  } else {
    one.indexed = false;
  }
  one.amount = one.paid * one.rate * one.index;
  return one;
}

/// What makes two records the same sale.
auto identity(const Sale& sale) {
  return std::tuple(sale.date.text(), sale.price.amount.text(), sale.price.currency,
                    static_cast<int>(sale.basis), sale.venue, sale.source, sale.notes);
}

double median(std::vector<double> values) {
  return quantile(std::move(values), 0.5, 7);
}

/// Takes out what lies far from all others by the modified z-score of the logarithm.
void name_outliers(Evidence& evidence, double most) {
  if (evidence.counted.size() < kFewest) return;
  std::vector<double> logs;
  for (const Comparable& one : evidence.counted)
    logs.push_back(std::log(one.amount));
  const double middle = median(logs);
  std::vector<double> away;
  for (const double one : logs)
    away.push_back(std::abs(one - middle));
  double deviation = median(away);
  constexpr double kLeast = 0.05;  // a twentieth of a price: closer than that is the same price
  deviation = std::max(deviation, kLeast);
  std::vector<Comparable> kept;
  for (std::size_t i = 0; i < logs.size(); ++i) {
    if (kNormal * away[i] / deviation > most) {
      evidence.excluded.push_back(
          {evidence.counted[i].sale, Excluded::outlier, evidence.counted[i].amount});
    } else {
      kept.push_back(evidence.counted[i]);
    }
  }
  evidence.counted = std::move(kept);
}

}  // namespace

std::string folded_name(std::string_view name) {
  std::string folded;
  for (const char c : name) {
    if (c == ' ' || c == '.' || c == '-' || c == ',') continue;
    folded += base::in_small_letters(c);
  }
  return folded;
}

Evidence weigh_sales(const Question& question, const std::vector<Sale>& sales,
                     const knowledge::Prices& prices) {
  Evidence evidence;
  const std::string maker = folded_name(question.maker);
  const std::string model = folded_name(question.model);
  std::set<decltype(identity(std::declval<const Sale&>()))> seen;
  for (const Sale& sale : sales) {
    if (folded_name(sale.maker) != maker || folded_name(sale.model) != model) continue;
    if (!seen.insert(identity(sale)).second) {
      evidence.excluded.push_back({sale, Excluded::twice});
      continue;
    }
    Excluded why = Excluded::asked;
    if (auto one = brought(question, sale, prices, why)) {
      evidence.counted.push_back(std::move(*one));
    } else {
      evidence.excluded.push_back({sale, why});
    }
  }
  name_outliers(evidence, prices.rules.outlier);
  return evidence;
}

}  // namespace winchbook::assess::value
