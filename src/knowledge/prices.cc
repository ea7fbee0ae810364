#include "knowledge/prices.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <utility>

#include "base/words_of_text.h"
#include "knowledge/stamp_text.h"
#include "knowledge/valid_file.h"
#include "tabular/rows.h"

namespace winchbook::knowledge {
namespace {

constexpr int kMonths = 12;
constexpr int kNearYears = 2;

std::optional<double> number(std::string_view text) {
  double value = 0;
  const auto read =
      std::from_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
  const bool whole = read.ec == std::errc() && read.ptr == text.data() + text.size();
  return whole && std::isfinite(value) && value > 0 ? std::optional(value) : std::nullopt;
}

std::optional<int> digits(std::string_view text) {
  int value = 0;
  const auto read = std::from_chars(text.data(), text.data() + text.size(), value);
  const bool whole = read.ec == std::errc() && read.ptr == text.data() + text.size();
  return whole && value > 0 ? std::optional(value) : std::nullopt;
}

bool is_currency(std::string_view text) {
  return text.size() == 3 && base::is_capitals(text);
}

/// Reads one table of the bench's or the program's own.
class TableReader {
 public:
  TableReader(std::istream& in, std::string name, Prices& into)
      : rows_(in, name), name_(std::move(name)), prices_(into) {}

  /// `currency` names an index file's; empty: the file is told by its columns.
  base::Diagnostics read(const std::string& currency) {
    const auto first = rows_.next();
    if (!first) return first.faults();
    if (!*first) return {fault(1, "the file is empty", "its first row names the columns")};
    const auto header = tabular::Header::read(**first, name_, {},
                                              {"when", "index", "currency", "from", "to", "rate"});
    if (!header) return header.faults();
    for (;;) {
      const auto row = rows_.next();
      if (!row) return row.faults();
      if (!*row) break;
      const bool is_rate = !header->field(**row, "rate").empty();
      is_rate ? rate(*header, **row) : figure(*header, **row, currency);
    }
    return faults_;
  }

 private:
  base::Diagnostic fault(int line, std::string message, std::string hint) {
    return base::error_at({name_, line, 0}, std::move(message), std::move(hint), "price-table");
  }

  void figure(const tabular::Header& header, const tabular::Row& row, const std::string& own) {
    const std::string_view when = header.field(row, "when");
    const auto year = digits(when.substr(0, 4));
    const auto month = when.size() == 7 && when[4] == '-' ? digits(when.substr(5)) : std::nullopt;
    const auto value = number(header.field(row, "index"));
    const std::string named(header.field(row, "currency"));
    const std::string& currency = named.empty() ? own : named;
    const bool dated = year && (when.size() == 4 || (month && *month <= kMonths));
    if (!dated || !value || !is_currency(currency)) {
      faults_.push_back(
          fault(row.line, "this row is no index figure",
                "write when (2024 or 2024-06), the index above zero, and the currency "
                "in three capitals"));
      return;
    }
    auto index = std::find_if(prices_.indices.begin(), prices_.indices.end(),
                              [&](const PriceIndex& one) { return one.currency == currency; });
    if (index == prices_.indices.end()) {
      prices_.indices.push_back({currency, {}});
      index = std::prev(prices_.indices.end());
    }
    const int first = *year * kMonths + (month ? *month - 1 : 0);
    for (int at = first; at < first + (month ? 1 : kMonths); ++at)
      index->months[at] = *value;
  }

  void rate(const tabular::Header& header, const tabular::Row& row) {
    const auto year = digits(header.field(row, "when"));
    const auto value = number(header.field(row, "rate"));
    const std::string from(header.field(row, "from"));
    const std::string to(header.field(row, "to"));
    if (!year || !value || !is_currency(from) || !is_currency(to) || from == to) {
      faults_.push_back(fault(row.line, "this row is no exchange rate",
                              "write the year, from and to in three capitals, and how many of the "
                              "second one of the first buys"));
      return;
    }
    prices_.rates.push_back({*year, from, to, *value});
  }

  tabular::RowReader rows_;
  std::string name_;
  Prices& prices_;
  base::Diagnostics faults_;
};

base::Diagnostics read_table(const base::Files& files, const std::filesystem::path& path,
                             const std::string& currency, Prices& into) {
  const auto stream = files.open(path);
  if (!stream) return stream.faults();
  return TableReader(**stream, path.string(), into).read(currency);
}

double attribute(pugi::xml_node node, const char* name) {
  return number(node.attribute(name).value()).value_or(0);
}

int whole(pugi::xml_node node, const char* name) {
  return digits(node.attribute(name).value()).value_or(0);
}

std::vector<std::string> phrases(pugi::xml_node node, const char* name) {
  std::vector<std::string> all;
  std::string_view rest = node.attribute(name).value();
  while (!rest.empty()) {
    const std::size_t end = std::min(rest.find(','), rest.size());
    all.push_back(folded_phrase(rest.substr(0, end)));
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  return all;
}

/// Words of the longest phrase that stands at a word.
std::size_t longest_at(const std::vector<std::string>& phrases, const std::vector<StampWord>& words,
                       std::size_t at) {
  std::size_t longest = 0;
  for (const std::string& phrase : phrases)
    longest = std::max(longest, phrase_at(words, at, phrase));
  return longest;
}

PriceRules rules_from(pugi::xml_node root) {
  PriceRules rules;
  const pugi::xml_node limits = root.child("limits");
  rules.least = whole(limits, "least");
  rules.regression = whole(limits, "regression");
  rules.per_column = whole(limits, "per-column");
  rules.condition = attribute(limits, "condition");
  rules.outlier = attribute(limits, "outlier");
  rules.interval = whole(limits, "interval");
  rules.reach = attribute(limits, "reach");
  rules.spread = attribute(limits, "spread");
  rules.most = whole(limits, "most");
  for (const pugi::xml_node node : root.children("adjustment")) {
    rules.adjustments.push_back(
        {node.attribute("of").value(), attribute(node, "percent"), folded(node)});
  }
  rules.box = {phrases(root.child("box"), "named"), phrases(root.child("box"), "not-named")};
  for (const pugi::xml_node node : root.children("purpose")) {
    rules.purposes.push_back({node.attribute("name").value(),
                              std::string_view(node.attribute("price").value()) == "buyer",
                              std::string_view(node.attribute("dealers").value()) == "yes",
                              folded(node), node.attribute("source").value()});
  }
  return rules;
}

/// The table's rate of one year, or its inverse.
std::optional<double> direct(const Prices& prices, std::string_view from, std::string_view to,
                             std::int64_t year) {
  for (const ExchangeRate& one : prices.rates) {
    if (one.year != year) continue;
    if (one.from == from && one.to == to) return one.rate;
    if (one.from == to && one.to == from) return 1 / one.rate;
  }
  return std::nullopt;
}

std::optional<double> exchange_in(const Prices& prices, std::string_view from, std::string_view to,
                                  std::int64_t year) {
  if (const auto straight = direct(prices, from, to, year)) return straight;
  for (const ExchangeRate& one : prices.rates) {
    if (one.year != year || (one.from != from && one.to != from)) continue;
    const std::string& between = one.from == from ? one.to : one.from;
    const auto first = direct(prices, from, between, year);
    const auto second = direct(prices, between, to, year);
    if (first && second) return *first * *second;
  }
  return std::nullopt;
}

}  // namespace

std::optional<IndexFigure> index_at(const PriceIndex& index, std::int64_t year, int month) {
  if (index.months.empty()) return std::nullopt;
  const std::int64_t wanted = year * kMonths + month - 1;
  if (wanted < index.months.begin()->first) return std::nullopt;
  if (wanted > index.months.rbegin()->first) {
    return IndexFigure{index.months.rbegin()->second, false, true};
  }
  const auto after = index.months.lower_bound(static_cast<int>(wanted));
  if (after->first == wanted) return IndexFigure{after->second, false, false};
  return IndexFigure{(std::prev(after)->second + after->second) / 2, true, false};
}

std::optional<IndexFigure> index_over(const PriceIndex& index, const base::Day& first,
                                      const base::Day& last) {
  IndexFigure mean;
  int count = 0;
  for (std::int64_t at = first.year * kMonths + first.month - 1;
       at <= last.year * kMonths + last.month - 1; ++at) {
    const auto one = index_at(index, at / kMonths, static_cast<int>(at % kMonths) + 1);
    if (!one) return std::nullopt;
    mean.value += one->value;
    mean.between = mean.between || one->between;
    mean.beyond = mean.beyond || one->beyond;
    ++count;
  }
  if (count == 0) return std::nullopt;
  mean.value /= count;
  return mean;
}

const PriceIndex* find_index(const Prices& prices, std::string_view currency) {
  const auto found = std::find_if(prices.indices.begin(), prices.indices.end(),
                                  [&](const PriceIndex& one) { return one.currency == currency; });
  return found == prices.indices.end() ? nullptr : &*found;
}

const Purpose* find_purpose(const Prices& prices, std::string_view name) {
  const auto found = std::find_if(prices.rules.purposes.begin(), prices.rules.purposes.end(),
                                  [&](const Purpose& one) { return one.name == name; });
  return found == prices.rules.purposes.end() ? nullptr : &*found;
}

bool names_box(const BoxWords& box, std::string_view name) {
  const std::vector<StampWord> words = stamp_words(name);
  for (std::size_t at = 0; at < words.size();) {
    const std::size_t is = longest_at(box.named, words, at);
    const std::size_t is_not = longest_at(box.not_named, words, at);
    if (is > is_not) return true;
    at += std::max<std::size_t>(is_not, 1);
  }
  return false;
}

std::optional<double> exchange(const Prices& prices, std::string_view from, std::string_view to,
                               std::int64_t year) {
  if (from == to) return 1;
  for (int away = 0; away <= kNearYears; ++away) {
    for (const std::int64_t near : {year - away, year + away}) {
      if (const auto rate = exchange_in(prices, from, to, near)) return rate;
    }
  }
  return std::nullopt;
}

base::Result<Prices> load_prices(const Source& source,
                                 const std::vector<std::filesystem::path>& more) {
  const std::filesystem::path folder = source.shared("prices");
  const auto rules = read_valid(source, folder / "rules.xml", "price-rules");
  if (!rules) return rules.faults();
  Prices prices;
  prices.rules = rules_from(rules->root());
  base::Diagnostics faults;
  const auto take = [&](const std::filesystem::path& path, const std::string& currency) {
    const auto wrong = read_table(source.files(), path, currency, prices);
    faults.insert(faults.end(), wrong.begin(), wrong.end());
  };
  for (const std::string& name : source.files().names_in(folder)) {
    if (!name.ends_with(".csv")) continue;
    const std::string stem = name.substr(0, name.size() - 4);
    take(folder / name, is_currency(stem) ? stem : std::string());
  }
  for (const std::filesystem::path& path : more)
    take(path, {});
  if (!faults.empty()) return faults;
  return prices;
}

}  // namespace winchbook::knowledge
