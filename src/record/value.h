#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/decimal.h"
#include "base/edtf_date.h"
#include "record/words.h"

namespace winchbook::record {

enum class SaleKind { auction, dealer, private_sale, asking_price, other };

/// A recorded sale, as a fact.
struct Sale {
  SaleId id;
  base::EdtfDate on;
  base::Money price;
  std::string included;  ///< "reel, box, spare spool"
  SaleKind kind = SaleKind::other;
  bool with_premium = false;  ///< the price holds the buyer's premium
  std::string state;          ///< in the source's own words
  std::optional<base::Percent> originality;
  bool box = false;
  std::string source;
  bool used = true;
  Words excluded_because;  ///< when it is not used
};

/// The evidence for a value, and what the value is for.
struct Value {
  base::EdtfDate effective;
  std::string basis;    ///< "what a willing buyer pays a willing seller"
  std::string purpose;  ///< "insurance"
  std::string currency;
  std::vector<Sale> sales;
  Words note;
};

}  // namespace winchbook::record
