#pragma once

#include <optional>
#include <string>

#include "base/decimal.h"
#include "daybook/entry.h"
#include "record/value.h"

namespace winchbook::daybook {

/// What a value in the record is for; what is empty is not said.
struct ValuePurposeRequest : Entry {
  std::optional<base::EdtfDate> effective;  ///< the day for which it holds
  std::string basis;                        ///< "what a willing buyer pays a willing seller"
  std::string purpose;                      ///< "insurance"
  std::string currency;                     ///< ISO 4217
  std::string note;
};

/// Begins the record's value, which needs the first four, or sets what is given of it.
[[nodiscard]] base::Result<Said> value_purpose(const ValuePurposeRequest& request, Draft& draft);

/// A recorded sale.
struct SaleRequest : Entry {
  std::string id;  ///< empty: sa-1, sa-2, …
  base::EdtfDate date;
  base::Money price;
  std::string included;  ///< "reel only"
  record::SaleKind kind = record::SaleKind::other;
  bool with_premium = false;
  std::string state;  ///< in the source's own words
  std::optional<base::Percent> originality;
  bool box = false;
  std::string source;
  std::string not_used;  ///< why it does not count; empty: it does
};

/// Adds the sale to the record's value. Error: the record does not say yet what the value is for.
[[nodiscard]] base::Result<Said> enter_sale(const SaleRequest& request, Draft& draft);

[[nodiscard]] forms::Job enter_sale_job();
[[nodiscard]] forms::Job value_purpose_job();

}  // namespace winchbook::daybook
