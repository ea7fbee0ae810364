#include "answers/shelf.h"

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
  std::string folder = ".";
  answers::ShelfRequest request;
  bool json = false;
};

Exit shelf(const Options& options, Surroundings& surroundings) {
  answers::ShelfRequest request = options.request;
  request.folder = options.folder;
  const library::World world{surroundings.files, surroundings.data, surroundings.version};
  const auto looked = answers::look_through_shelf(world, request);
  if (!looked) return tell(looked.faults(), surroundings.err);
  static_cast<void>(tell(looked->warnings, surroundings.err));
  surroundings.out << (options.json ? answers::shelf_as_json(*looked)
                                    : answers::shelf_in_words(*looked, request));
  return kFine;
}

}  // namespace

Action add_shelf(CLI::App& app) {
  auto options = std::make_shared<Options>();
  answers::ShelfRequest& request = options->request;
  app.add_option("FOLDER", options->folder,
                 "the folder in which the reels' folders lie, at any depth; left out, here");
  app.add_option("--maker", request.maker, "by this maker; the beginnings of its words do");
  app.add_option("--model", request.model, "of this model");
  app.add_option("--owner", request.owner, "who has it, or brought it last");
  app.add_option("--since", request.since, "here on that day or later: 2024, 2026-03-05");
  app.add_flag("--unfinished", request.unfinished, "still here, or with parts unaccounted for");
  app.add_option("--fitted", request.fitted, "a part that was put in: \"drag washer\"");
  app.add_flag("--json", options->json, "the list as JSON (schemas/shelf.schema.json)");
  return [options](Surroundings& surroundings) { return shelf(*options, surroundings); };
}

}  // namespace winchbook::cli
