#include "app/advise.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <ostream>
#include <string>

#include "cli/command.h"
#include "cli/measures.h"

namespace winchbook::cli {
namespace {

struct Options {
  std::string path;
  std::string rank;
  std::string sales;
  std::string as_of;
  bool json = false;
};

Exit advise(const Options& options, Surroundings& surroundings) {
  const auto ranking = app::parse_ranking(options.rank);
  if (!ranking) return tell(ranking.faults(), surroundings.err);
  app::ValueRequest request;
  request.record = options.path;
  request.sales = options.sales;
  request.as_of = request.today = surroundings.today;
  if (!options.as_of.empty()) {
    const auto day = base::parse_day(options.as_of);
    if (!day) return wrong_command(day.faults(), surroundings.err);
    request.as_of = *day;
  }
  const app::World world{surroundings.files, surroundings.data, surroundings.version};
  const auto advised = app::advise(world, request, *ranking);
  if (!advised) return tell(advised.faults(), surroundings.err);
  surroundings.out << (options.json ? app::advice_as_json(*advised)
                                    : app::advice_in_words(*advised));
  return kFine;
}

}  // namespace

Action add_advise(CLI::App& app) {
  auto options = std::make_shared<Options>();
  app.add_option("PATH", options->path, "the reel's folder, or its record.xml")->required();
  app.add_option(
      "--rank", options->rank,
      "what matters, the most important first: memory,use,originality,value,way-back,cost; "
      "left out, the owner's ranking in the record");
  app.add_option("--sales", options->sales,
                 "recorded sales, CSV or XML; left out, those in the record");
  app.add_option("--as-of", options->as_of, "the day for which sales count; left out, today");
  app.add_flag("--json", options->json, "the answer as JSON (schemas/advise.schema.json)");
  return [options](Surroundings& surroundings) { return advise(*options, surroundings); };
}

}  // namespace winchbook::cli
