#include "daybook/entries/donor.h"

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
  daybook::DonorRequest request;
};

Exit tell_donor(Options options, Surroundings& surroundings) {
  Questions questions(surroundings);
  questions.need("NAME", "What gives the parts (\"a broken Skerry No. 30\")?",
                 options.request.name);
  if (!questions.faults().empty()) return tell(questions.faults(), surroundings.err);
  const auto day = day_of(options.writing, surroundings);
  if (!day) return tell(day.faults(), surroundings.err);
  options.request.acquired = base::iso_text(*day);
  return write(options.writing, daybook::donor(std::move(options.request)), surroundings);
}

}  // namespace

Action add_donor(CLI::App& app) {
  auto options = std::make_shared<Options>();
  add_writing_options(app, options->writing);
  app.add_option("NAME", options->request.name, "what it is: \"a broken Skerry No. 30\"");
  add_id_option(app, options->request.id);
  app.add_flag("--same-maker", options->request.same_maker, "it is by the reel's own maker");
  app.add_option("--note", options->request.note, "where it came from, what is left of it");
  app.add_option("--cost", options->request.cost, "what it cost: \"35 GBP\"");
  return [options](Surroundings& surroundings) { return tell_donor(*options, surroundings); };
}

}  // namespace winchbook::cli
