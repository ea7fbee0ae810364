#pragma once

#include <string>

#include "daybook/edit.h"

namespace winchbook::daybook {

/// What a value in the record is for; what is empty is not said.
struct ValuePurposeRequest {
  std::string effective;  ///< EDTF: the day for which it holds
  std::string basis;      ///< "what a willing buyer pays a willing seller"
  std::string purpose;    ///< "insurance"
  std::string currency;   ///< ISO 4217
  std::string note;
};

/// Begins the record's value, or sets what is given of it.
[[nodiscard]] Change value_purpose(ValuePurposeRequest request);

/// A recorded sale.
struct SaleRequest {
  std::string id;        ///< empty: sa-1, sa-2, …
  std::string date;      ///< EDTF
  std::string price;     ///< "128.00 GBP"
  std::string included;  ///< "reel only"
  std::string kind;      ///< "auction", "dealer", "private", "asking-price", "other"
  bool with_premium = false;
  std::string state;  ///< in the source's own words
  std::string originality;
  bool box = false;
  std::string source;
  std::string not_used;  ///< why it does not count; empty: it does
};

/// Adds the sale to the record's value. Error: the record does not say yet what the value is for.
[[nodiscard]] Change enter_sale(SaleRequest request);

}  // namespace winchbook::daybook
