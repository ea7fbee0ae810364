#include "answers/value.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <ostream>
#include <string>

#include "cli/command.h"
#include "cli/measures.h"
#include "cli/valuing.h"

namespace winchbook::cli {
namespace {

struct Options {
  std::string path;
  ValuingOptions valuing;
  bool json = false;
};

Exit value(const Options& options, Surroundings& surroundings) {
  const auto terms = terms_of(options.valuing);
  if (!terms) return wrong_command(terms.faults(), surroundings.err);
  const answers::ValueRequest request{options.path, *terms, surroundings.today};
  const library::World world{surroundings.files, surroundings.data, surroundings.version};
  const auto valued = answers::value(world, request);
  if (!valued) return tell(valued.faults(), surroundings.err);
  surroundings.out << (options.json ? answers::value_as_json(*valued)
                                    : answers::value_in_words(*valued));
  return kFine;
}

}  // namespace

Action add_value(CLI::App& app) {
  auto options = std::make_shared<Options>();
  app.add_option("PATH", options->path, "the reel's folder, or its record.xml")->required();
  add_valuing_options(app, options->valuing, "those in the record", "today");
  app.add_flag("--json", options->json, "the answer as JSON (schemas/value.schema.json)");
  return [options](Surroundings& surroundings) { return value(*options, surroundings); };
}

}  // namespace winchbook::cli
