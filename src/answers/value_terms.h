#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "base/edtf_date.h"

namespace winchbook::answers {

/// By what, for what and for when a reel is valued.
struct ValueTerms {
  std::filesystem::path sales;                ///< empty: the sales that the record holds
  std::vector<std::filesystem::path> prices;  ///< further indices and exchange rates
  std::optional<base::Day> as_of;             ///< the day the value is for; empty: today
  std::string currency;                       ///< empty: the record's own, or the most frequent
  std::string purpose = "insurance";
};

}  // namespace winchbook::answers
