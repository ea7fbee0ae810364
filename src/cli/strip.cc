#include "app/strip.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <string>
#include <utility>

#include "cli/writing.h"
#include "recordfile/record_file.h"

namespace winchbook::cli {
namespace {

struct Options {
  WritingOptions writing;
  app::StripRequest request;
};

/// The usual caution in the record's language.
base::Result<std::string> spring_caution(const std::string& path, Surroundings& surroundings) {
  const app::World world{surroundings.files, surroundings.data, surroundings.version};
  const auto record = app::read_xml(world, recordfile::record_path(surroundings.files, path));
  if (!record) return record.faults();
  const auto templates = app::read_schema(world, "template-1.xsd");
  if (!templates) return templates.faults();
  const auto words = app::read_words(world, record->root().attribute("lang").value(), *templates);
  if (!words) return words.faults();
  return words->say("strip.spring-caution");
}

Exit tell_strip(Options options, Surroundings& surroundings) {
  if (options.request.step.empty()) {
    Questions questions(surroundings);
    questions.need("WHAT", "What is done in this step?", options.request.what);
    if (!questions.faults().empty()) return tell(questions.faults(), surroundings.err);
  }
  const auto day = day_of(options.writing, surroundings);
  if (!day) return tell(day.faults(), surroundings.err);
  options.request.on = *day;
  const auto caution = spring_caution(options.writing.path, surroundings);
  if (!caution) return tell(caution.faults(), surroundings.err);
  options.request.spring_caution = *caution;
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
