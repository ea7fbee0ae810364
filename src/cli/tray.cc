#include "daybook/entries/tray.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <ostream>
#include <string>
#include <utility>

#include "cli/writing.h"
#include "recordfile/record_file.h"

namespace winchbook::cli {
namespace {

struct Options {
  WritingOptions writing;
  daybook::TrayRequest request;
};

bool changes_nothing(const daybook::TrayRequest& request) {
  return request.off.empty() && request.refitted.empty() && !request.refit_all &&
         request.found_loose.empty() && request.bagged.empty() && request.to_owner.empty() &&
         request.kept.empty() && request.lost.empty() && request.scrapped.empty();
}

Exit show(const Options& options, Surroundings& surroundings) {
  const auto loaded =
      recordfile::read(surroundings.files, options.writing.path, surroundings.data / "schemas");
  if (!loaded) return tell(loaded.faults(), surroundings.err);
  const record::Visit* visit = record::last_visit(loaded->record);
  if (visit == nullptr) {
    return tell(
        {base::error("the reel was not taken in yet", "begin with winchbook intake", "visit")},
        surroundings.err);
  }
  surroundings.out << daybook::tray_in_words(assess::tray::account(loaded->record, *visit));
  return kFine;
}

Exit tell_tray(Options options, Surroundings& surroundings) {
  if (changes_nothing(options.request)) return show(options, surroundings);
  const auto day = day_of(options.writing, surroundings);
  if (!day) return tell(day.faults(), surroundings.err);
  options.request.on = *day;
  const std::string agreed = options.request.agreed;
  const auto make = [request = std::move(options.request)](const std::string& given) {
    daybook::TrayRequest wanted = request;
    wanted.agreed = given;
    return daybook::tray(std::move(wanted));
  };
  return write_within_limits(options.writing, make, agreed, surroundings);
}

}  // namespace

Action add_tray(CLI::App& app) {
  auto options = std::make_shared<Options>();
  add_writing_options(app, options->writing);
  daybook::TrayRequest& request = options->request;
  app.add_option("--off", request.off, "a part that came off, without a step in strip");
  app.add_option("--refit", request.refitted,
                 "a part that is back in its place; \"tail screws: 3\" for three of them");
  app.add_flag("--refit-all", request.refit_all, "everything that is off and nowhere else is back");
  app.add_option("--found-loose", request.found_loose, "a part that lay loose");
  app.add_option("--bag", request.bagged, "a part that goes into the bag of --label");
  app.add_option("--label", request.bag, "the bag's label: \"bag 3\"");
  app.add_option("--to-owner", request.to_owner, "a part given to the owner");
  app.add_option("--keep", request.kept, "a part the bench keeps, with --agreed");
  app.add_option("--lost", request.lost, "a part that is lost");
  app.add_option("--scrap", request.scrapped, "a part thrown away, with --agreed");
  app.add_option("--agreed", request.agreed, "the agreement that lets it go");
  return [options](Surroundings& surroundings) { return tell_tray(*options, surroundings); };
}

}  // namespace winchbook::cli
