#pragma once

#include <filesystem>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/edtf_date.h"
#include "base/result.h"
#include "knowledge/source.h"

namespace winchbook::knowledge {

/// A price index of one currency: months as year × 12 + month − 1. A yearly figure stands for each
/// of its months.
struct PriceIndex {
  std::string currency;
  std::map<int, double> months;
};

/// An index figure, and how it was come by.
struct IndexFigure {
  double value = 0;
  bool between = false;  ///< a missing month: the mean of its neighbours
  bool beyond = false;   ///< after the table's end: its last figure
};

/// The figure of a month. Missing months take the mean of the nearest before and after, months
/// after the end the last figure; before the beginning there is none.
[[nodiscard]] std::optional<IndexFigure> index_at(const PriceIndex& index, std::int64_t year,
                                                  int month);
/// The mean over the months from `first` to `last`.
[[nodiscard]] std::optional<IndexFigure> index_over(const PriceIndex& index, const base::Day& first,
                                                    const base::Day& last);

/// Units of `to` for one of `from`, over a year.
struct ExchangeRate {
  int year = 0;
  std::string from;
  std::string to;
  double rate = 0;
};

/// How much a step of one trait is worth.
struct Adjustment {
  std::string trait;   ///< "surface", "originality" …
  double percent = 0;  ///< for one step
  std::string reason;
};

/// What a value is for, and which prices speak of it: hammer, premium, dealers' and private prices
/// are prices of different things. One whose fees are needed and not recorded does not count, so
/// that there are fewer sales and none of them guessed.
struct Purpose {
  std::string name;        ///< "insurance"
  bool buyer_pays = true;  ///< the price is what a buyer pays; else what a seller is paid
  bool dealers = true;     ///< dealers' prices count
  std::string definition;
  std::string source;
};

/// By which words of its name a thing that came with a reel is a box for it, folded (stamp_text.h).
struct BoxWords {
  std::vector<std::string> named;      ///< "BOX", "BOX OF CARD"
  std::vector<std::string> not_named;  ///< "BOX OF", "BOX SPANNER": the longer phrase counts
};

/// The rules of a value, each with its reason in the file.
struct PriceRules {
  int least = 3;                        ///< sales, for any figure
  int regression = 12;                  ///< sales, for a regression
  int per_column = 4;                   ///< sales for each column of it
  double condition = 30;                ///< most condition number of the standardised columns
  double outlier = 3.5;                 ///< most modified z-score
  int interval = 80;                    ///< per hundred, of the prediction interval
  double reach = 1;                     ///< steps that a reel may lie beyond the sales
  double spread = 10;                   ///< most of a range's high end over its low end
  int most = 10000;                     ///< the newest sales of one model that are used
  std::vector<Adjustment> adjustments;  ///< in the order in which they are made
  BoxWords box;
  std::vector<Purpose> purposes;
};

/// All that is known of prices besides the sales.
struct Prices {
  PriceRules rules;
  std::vector<PriceIndex> indices;
  std::vector<ExchangeRate> rates;
};

/// The index of a currency, or null.
[[nodiscard]] const PriceIndex* find_index(const Prices& prices, std::string_view currency);
/// The purpose of that name, or null.
[[nodiscard]] const Purpose* find_purpose(const Prices& prices, std::string_view name);
/// Whether a name says a box: "Maker's box" and "Box of card" do, "Box of flies" does not.
[[nodiscard]] bool names_box(const BoxWords& words, std::string_view name);
/// Units of `to` for one of `from` in a year: the table's, its inverse, or through one currency
/// between; the nearest year of the table is taken, at most two away.
[[nodiscard]] std::optional<double> exchange(const Prices& prices, std::string_view from,
                                             std::string_view to, std::int64_t year);

/// Reads `shared/prices/`: rules.xml, rates.csv and one index a currency (USD.csv);
/// `more` are further index and rate files of the bench, told apart by their columns.
[[nodiscard]] base::Result<Prices> load_prices(const Source& source,
                                               const std::vector<std::filesystem::path>& more = {});

}  // namespace winchbook::knowledge
