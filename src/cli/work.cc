#include "daybook/entries/work.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <string>
#include <utility>

#include "cli/writing.h"

namespace winchbook::cli {
namespace {

struct Options {
  WritingOptions writing;
  daybook::WorkRequest request;
};

Exit tell_work(Options options, Surroundings& surroundings) {
  Questions questions(surroundings);
  questions.need("WHAT", "What was done?", options.request.what);
  if (!questions.faults().empty()) return tell(questions.faults(), surroundings.err);
  const auto day = day_of(options.writing, surroundings);
  if (!day) return tell(day.faults(), surroundings.err);
  options.request.on = *day;
  const std::string agreed = options.request.agreed;
  const auto make = [request = std::move(options.request)](const std::string& given) {
    daybook::WorkRequest wanted = request;
    wanted.agreed = given;
    return daybook::work(std::move(wanted));
  };
  return write_within_limits(options.writing, make, agreed, surroundings);
}

}  // namespace

Action add_work(CLI::App& app) {
  auto options = std::make_shared<Options>();
  add_writing_options(app, options->writing);
  app.add_option("WHAT", options->request.what, "what was done, in a sentence");
  app.add_option("--part", options->request.parts, "a part it was done to");
  app.add_option("--by", options->request.by, "who did it; left out, the bench's first restorer");
  app.add_option("--hours", options->request.hours, "how long it took");
  app.add_option("--parts-cost", options->request.parts_cost,
                 "what was bought for it: \"4.20 GBP\"");
  app.add_option("--agreed", options->request.agreed,
                 "the agreement that allows what a limit forbids");
  app.add_option("--until", options->request.until, "its last day, when it took several");
  app.add_option("--way-back", options->request.way_back,
                 "how far it can be undone: \"100: Fully.\"");
  app.add_option("--caution", options->request.caution,
                 "a caution beside it: \"Solvent: open air, no flame\"");
  return [options](Surroundings& surroundings) { return tell_work(*options, surroundings); };
}

}  // namespace winchbook::cli
