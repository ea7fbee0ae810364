#include "answers/lookup.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <ostream>
#include <string>
#include <vector>

#include "answers/lookup_care.h"
#include "cli/command.h"

namespace winchbook::cli {
namespace {

struct Options {
  std::string kind;
  std::vector<std::string> value;
  std::vector<std::string> makers;
  bool json = false;
};

Exit lookup_care(const std::string& value, bool json, const library::World& world,
                 Surroundings& surroundings) {
  const auto answer = answers::look_up_care(world, value);
  if (!answer) return tell(answer.faults(), surroundings.err);
  surroundings.out << (json ? answers::care_as_json(*answer) : answers::care_in_words(*answer));
  return kFine;
}

Exit lookup(const Options& options, Surroundings& surroundings) {
  answers::LookupRequest request;
  request.kind = options.kind;
  for (const std::string& word : options.value)
    request.value += (request.value.empty() ? "" : " ") + word;
  for (const std::string& file : options.makers)
    request.makers.emplace_back(file);
  request.today = surroundings.today;
  const library::World world{surroundings.files, surroundings.data, surroundings.version};
  if (request.kind == "care") return lookup_care(request.value, options.json, world, surroundings);
  const auto answer = answers::look_up(world, std::move(request));
  if (!answer) return tell(answer.faults(), surroundings.err);
  surroundings.out << (options.json ? answers::lookup_as_json(*answer)
                                    : answers::lookup_in_words(*answer));
  return kFine;
}

std::string kinds() {
  std::string all;
  for (const std::string_view kind : answers::lookup_kinds())
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
