#include "cli/valuing.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>

#include "words/catalogue.h"

namespace winchbook::cli {

void add_valuing_options(CLI::App& app, ValuingOptions& options, const std::string& sales_help,
                         const std::string& day_help) {
  app.add_option("--sales", options.sales, "recorded sales, CSV or XML; left out, " + sales_help);
  app.add_option("--prices", options.prices,
                 "a price index or exchange rates of your own, CSV; may be given again");
  app.add_option("--as-of", options.as_of, "the day the value is for; left out, " + day_help);
  app.add_option("--currency", options.currency, "GBP; left out, the record's or the sales' own");
  app.add_option("--purpose", options.purpose, "insurance (left out), sale or family");
}

base::Result<answers::ValueTerms> terms_of(const ValuingOptions& options) {
  answers::ValueTerms terms;
  terms.sales = options.sales;
  terms.prices.assign(options.prices.begin(), options.prices.end());
  if (!options.as_of.empty()) {
    const auto day = base::parse_day(options.as_of);
    if (!day) return day.faults();
    terms.as_of = *day;
  }
  if (!options.currency.empty() && !words::is_currency(options.currency)) {
    return base::error("--currency: there is no currency \"" + options.currency + "\"",
                       "write its three capitals: GBP, EUR, USD (ISO 4217)", "command-currency");
  }
  terms.currency = options.currency;
  terms.purpose = options.purpose;
  return terms;
}

}  // namespace winchbook::cli
