#include "app/value.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <ostream>
#include <string>
#include <vector>

#include "cli/command.h"
#include "cli/measures.h"
#include "words/catalogue.h"

namespace winchbook::cli {
namespace {

struct Options {
  std::string path;
  std::string sales;
  std::vector<std::string> prices;
  std::string as_of;
  std::string currency;
  std::string purpose = "insurance";
  bool json = false;
};

Exit value(const Options& options, Surroundings& surroundings) {
  app::ValueRequest request;
  request.record = options.path;
  request.sales = options.sales;
  request.prices.assign(options.prices.begin(), options.prices.end());
  request.as_of = request.today = surroundings.today;
  if (!options.as_of.empty()) {
    const auto day = base::parse_day(options.as_of);
    if (!day) return wrong_command(day.faults(), surroundings.err);
    request.as_of = *day;
  }
  if (!options.currency.empty() && !words::is_currency(options.currency)) {
    return wrong_command(
        {base::error("--currency: there is no currency \"" + options.currency + "\"",
                     "write its three capitals: GBP, EUR, USD (ISO 4217)", "command-currency")},
        surroundings.err);
  }
  request.currency = options.currency;
  request.purpose = options.purpose;
  const app::World world{surroundings.files, surroundings.data, surroundings.version};
  const auto valued = app::value(world, request);
  if (!valued) return tell(valued.faults(), surroundings.err);
  surroundings.out << (options.json ? app::value_as_json(*valued) : app::value_in_words(*valued));
  return kFine;
}

}  // namespace

Action add_value(CLI::App& app) {
  auto options = std::make_shared<Options>();
  app.add_option("PATH", options->path, "the reel's folder, or its record.xml")->required();
  app.add_option("--sales", options->sales,
                 "recorded sales, CSV or XML; left out, those in the record");
  app.add_option("--prices", options->prices,
                 "a price index or exchange rates of your own, CSV; may be given again");
  app.add_option("--as-of", options->as_of, "the day the value is for; left out, today");
  app.add_option("--currency", options->currency, "GBP; left out, the record's or the sales' own");
  app.add_option("--purpose", options->purpose, "insurance, sale or family");
  app.add_flag("--json", options->json, "the answer as JSON (schemas/value.schema.json)");
  return [options](Surroundings& surroundings) { return value(*options, surroundings); };
}

}  // namespace winchbook::cli
