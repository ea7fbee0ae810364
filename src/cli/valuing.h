#pragma once

#include <string>
#include <vector>

#include "answers/value_terms.h"
#include "base/result.h"

namespace CLI {
class App;
}  // namespace CLI

namespace winchbook::cli {

/// The options of every command that values a reel, as typed.
struct ValuingOptions {
  std::string sales;
  std::vector<std::string> prices;
  std::string as_of;
  std::string currency;
  std::string purpose = "insurance";
};

/// `sales_help` and `day_help` say what it means to leave --sales and --as-of out.
void add_valuing_options(CLI::App& app, ValuingOptions& options, const std::string& sales_help,
                         const std::string& day_help);

/// What was typed, as terms. Error for a day or a currency that is none.
[[nodiscard]] base::Result<answers::ValueTerms> terms_of(const ValuingOptions& options);

}  // namespace winchbook::cli
