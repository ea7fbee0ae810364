#include "answers/date.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <ostream>
#include <string>

#include "cli/command.h"

namespace winchbook::cli {
namespace {

struct Options {
  std::string path;
  bool json = false;
};

Exit date(const Options& options, Surroundings& surroundings) {
  const library::World world{surroundings.files, surroundings.data, surroundings.version};
  const auto graded = answers::grade(world, options.path);
  if (!graded) return tell(graded.faults(), surroundings.err);
  static_cast<void>(tell(graded->loaded.warnings, surroundings.err));
  surroundings.out << (options.json ? answers::date_as_json(*graded)
                                    : answers::date_in_words(*graded));
  return kFine;
}

}  // namespace

Action add_date(CLI::App& app) {
  auto options = std::make_shared<Options>();
  app.add_option("PATH", options->path, "the reel's folder, or its record.xml")->required();
  app.add_flag("--json", options->json, "the answer as JSON (schemas/date.schema.json)");
  return [options](Surroundings& surroundings) { return date(*options, surroundings); };
}

}  // namespace winchbook::cli
