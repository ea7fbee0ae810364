#include "daybook/entries/undo.h"

#include <fmt/format.h>

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <optional>
#include <ostream>
#include <string>

#include "cli/writing.h"

namespace winchbook::cli {
namespace {

struct Options {
  std::string path;
  int change = 0;
  bool list = false;
  bool dry_run = false;
};

Exit tell_undo(const Options& options, Surroundings& surroundings) {
  const library::World world{surroundings.files, surroundings.data, surroundings.version};
  if (options.list) {
    for (const daybook::Version& one : daybook::changes_of(world, options.path))
      surroundings.out << fmt::format("{:>4}  {}\n", one.number, one.command);
    return kFine;
  }
  const auto change = options.change > 0 ? std::optional(options.change) : std::nullopt;
  const daybook::EditRequest request{options.path, surroundings.command_line, options.dry_run};
  return tell_edited(daybook::undo(world, request, change), options.dry_run, surroundings);
}

}  // namespace

Action add_undo(CLI::App& app) {
  auto options = std::make_shared<Options>();
  app.add_option("PATH", options->path, "the reel's folder, or its record.xml")->required();
  app.add_option("--change", options->change,
                 "go back before the change with this number; left out, the last one")
      ->check(CLI::Range(1, 1'000'000'000));
  app.add_flag("--list", options->list, "tell the changes, oldest first, and write nothing");
  app.add_flag("--dry-run", options->dry_run, "print what would change, and write nothing");
  return [options](Surroundings& surroundings) { return tell_undo(*options, surroundings); };
}

}  // namespace winchbook::cli
