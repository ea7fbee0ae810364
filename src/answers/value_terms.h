#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/edtf_date.h"
#include "forms/form.h"

namespace winchbook::answers {

/// A currency's three capitals (ISO 4217): "GBP".
struct Currency {
  std::string code;
};
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, Currency& into);

/// By what, for what and for when a reel is valued.
struct ValueTerms {
  std::filesystem::path sales;                ///< empty: the sales that the record holds
  std::vector<std::filesystem::path> prices;  ///< further indices and exchange rates
  std::optional<base::Day> as_of;             ///< the day the value is for; empty: today
  Currency currency;                          ///< empty: the record's own, or the most frequent
  std::string purpose = "insurance";
};

/// The fields of every job that values a reel; `sales_help` and `day_help` say what it means to
/// leave --sales and --as-of out.
[[nodiscard]] forms::Form valuing_form(ValueTerms& terms, std::string_view sales_help,
                                       std::string_view day_help);

}  // namespace winchbook::answers
