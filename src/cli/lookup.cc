#include "app/lookup.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <ostream>
#include <string>
#include <vector>

#include "app/lookup_care.h"
#include "cli/command.h"

namespace winchbook::cli {
namespace {

struct Options {
  std::string kind;
  std::vector<std::string> value;
  std::vector<std::string> makers;
  bool json = false;
};

Exit lookup_care(const std::string& value, bool json, const app::World& world,
                 Surroundings& surroundings) {
  const auto answer = app::look_up_care(world, value);
  if (!answer) return tell(answer.faults(), surroundings.err);
  surroundings.out << (json ? app::care_as_json(*answer) : app::care_in_words(*answer));
  return kFine;
}

Exit lookup(const Options& options, Surroundings& surroundings) {
  app::LookupRequest request;
  request.kind = options.kind;
  for (const std::string& word : options.value)
    request.value += (request.value.empty() ? "" : " ") + word;
  for (const std::string& file : options.makers)
    request.makers.emplace_back(file);
  request.today = surroundings.today;
  const app::World world{surroundings.files, surroundings.data, surroundings.version};
  if (request.kind == "care") return lookup_care(request.value, options.json, world, surroundings);
  const auto answer = app::look_up(world, std::move(request));
  if (!answer) return tell(answer.faults(), surroundings.err);
  surroundings.out << (options.json ? app::lookup_as_json(*answer) : app::lookup_in_words(*answer));
  return kFine;
}

std::string kinds() {
  std::string all;
  for (const std::string_view kind : app::lookup_kinds())
    all += (all.empty() ? "" : ", ") + std::string(kind);
  return all + ", care";
}

}  // namespace

Action add_lookup(CLI::App& app) {
  auto options = std::make_shared<Options>();
  app.add_option("KIND", options->kind, kinds())->required();
  app.add_option("VALUE", options->value, "as it is stamped: \"2,185,170\", \"Chicago 7, Ill.\"")
      ->required();
  app.add_option("--maker", options->makers, "a maker file of your own, besides shared/makers/")
      ->allow_extra_args(false);
  app.add_flag("--json", options->json,
               "the answer as JSON (schemas/lookup.schema.json; schemas/care.schema.json)");
  return [options](Surroundings& surroundings) { return lookup(*options, surroundings); };
}

}  // namespace winchbook::cli
