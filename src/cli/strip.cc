#include "app/strip.h"

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
  app::StripRequest request;
};

Exit tell_strip(Options options, Surroundings& surroundings) {
  if (options.request.step.empty()) {
    Questions questions(surroundings);
    questions.need("WHAT", "What is done in this step?", options.request.what);
    if (!questions.faults().empty()) return tell(questions.faults(), surroundings.err);
  }
  const auto day = day_of(options.writing, surroundings);
  if (!day) return tell(day.faults(), surroundings.err);
  options.request.on = *day;
  options.request.spring_caution =
      "Springs: Cover it with a cloth; wear glasses; note where it seats. Local rules come first.";
  return write(options.writing, app::strip(std::move(options.request)), surroundings);
}

}  // namespace

Action add_strip(CLI::App& app) {
  auto options = std::make_shared<Options>();
  add_writing_options(app, options->writing);
  app.add_option("WHAT", options->request.what, "what is done: \"Lift the bridge straight up.\"");
  app.add_option("--step", options->request.step,
                 "a step that is written already, by its number or id, and is done now");
  app.add_option("--off", options->request.off,
                 "a part that comes off, in order; \"tail screws: 4\" for four of them");
  app.add_option("--orientation", options->request.orientation, "which way up, which face out");
  app.add_option("--tool", options->request.tool, "the tool");
  app.add_flag("--spring", options->request.spring, "a spring comes free in this step");
  app.add_option("--caution", options->request.caution, "a caution: \"Springs: cover it\"");
  app.add_option("--photo", options->request.photos, "a photograph of the step");
  return [options](Surroundings& surroundings) { return tell_strip(*options, surroundings); };
}

}  // namespace winchbook::cli
