#pragma once

#include <array>
#include <cstddef>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/decimal.h"
#include "base/edtf_date.h"
#include "base/enum_words.h"
#include "base/result.h"
#include "knowledge/source.h"

namespace winchbook::knowledge {

/// What a price is the price of.
enum class Basis {
  hammer,   ///< the hammer price, without the buyer's premium
  premium,  ///< what the buyer paid at auction, premium and all
  asking,   ///< asked, not paid: never counts
  privately,
  dealer,
};

[[nodiscard]] constexpr auto enum_words(Basis /*list*/) {
  return std::to_array<base::EnumWord<Basis>>({
      {Basis::hammer, "hammer"},
      {Basis::premium, "premium"},
      {Basis::asking, "asking"},
      {Basis::privately, "private"},
      {Basis::dealer, "dealer"},
  });
}

/// What a price depends on besides maker, model and date; a better reel has the smaller word
/// number.
enum class Trait { surface, structure, working, completeness, originality, box };

[[nodiscard]] constexpr auto enum_words(Trait /*list*/) {
  return std::to_array<base::EnumWord<Trait>>({
      {Trait::surface, "surface"},
      {Trait::structure, "structure"},
      {Trait::working, "working"},
      {Trait::completeness, "completeness"},
      {Trait::originality, "originality"},
      {Trait::box, "box"},
  });
}
constexpr int kTraits = 6;

/// A reel's state as prices see it. Axes are word numbers, 0 best to 3; originality is in tens of
/// points below 100 (0 best to 10); box is 0 with its box, 1 without. Empty: not told.
struct SaleState {
  std::array<std::optional<double>, kTraits> traits;

  [[nodiscard]] const std::optional<double>& operator[](Trait trait) const {
    return traits.at(static_cast<std::size_t>(trait));
  }
  std::optional<double>& operator[](Trait trait) {
    return traits.at(static_cast<std::size_t>(trait));
  }
};

/// The traits in which two states differ.
[[nodiscard]] std::vector<Trait> changes(const SaleState& from, const SaleState& to);

/// A recorded sale, as a fact.
struct Sale {
  int line = 0;  ///< of the file, or 0 for one of the record's own
  base::EdtfDate date;
  base::Money price;
  Basis basis = Basis::hammer;
  std::optional<base::Decimal> fees;  ///< the buyer's, on top of a hammer price or within a premium
  std::string venue;
  std::string maker;
  std::string model;
  std::string kind;
  SaleState state;
  std::string notes;
  std::string source;
  std::string not_used;  ///< the bench's own reason for leaving it out; empty: it may count
};

/// The columns of a sales file in CSV, in the order in which they are usually written. date, price,
/// currency, basis, maker and model must be there. The words of the axes are those of `grade`.
constexpr std::string_view kSalesColumns =
    "date,price,currency,basis,fees,venue,maker,model,kind,surface,structure,working,completeness,"
    "originality,box,notes,source";

/// Which rows of a sales file are wanted whole; the others are passed over unread.
using WantsSale = std::function<bool(std::string_view maker, std::string_view model)>;

/// A sales file, and what its rows are held against.
struct SalesFile {
  std::filesystem::path path;
  base::Day today;                                         ///< no sale is later
  std::function<bool(std::string_view code)> is_currency;  ///< whether ISO 4217 knows it
};

/// The sales that were wanted, in the order of the file.
struct SalesRead {
  std::vector<Sale> sales;
  std::size_t older = 0;  ///< wanted too, but older than those that were kept
};

/// Reads a sales file row by row: CSV, or XML by `schemas/sales-1.xsd`, told apart by how they
/// begin. Rows that are wanted are read whole and given to `take`, and what is wrong in them is
/// told with its line (a hundred at most, then how many more). Memory does not grow with a CSV
/// file.
[[nodiscard]] base::Diagnostics each_sale(const Source& source, const SalesFile& file,
                                          const WantsSale& wants,
                                          const std::function<void(Sale)>& take);

/// The sales that are wanted. Of more than `most` the newest are kept.
[[nodiscard]] base::Result<SalesRead> read_sales(const Source& source, const SalesFile& file,
                                                 const WantsSale& wants, std::size_t most);

}  // namespace winchbook::knowledge
