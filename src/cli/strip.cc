#include "daybook/entries/strip.h"

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
  daybook::StripRequest request;
  bool ask = false;
};

/// What the trade knows of the springs in this kind of reel, in the record's language.
struct Lore {
  knowledge::Knowledge knowledge;
  daybook::SpringLore springs;
};

base::Result<std::shared_ptr<Lore>> read_lore(const std::string& path, Surroundings& surroundings) {
  const library::World world{surroundings.files, surroundings.data, surroundings.version};
  const auto record = library::read_xml(world, recordfile::record_path(surroundings.files, path));
  if (!record) return record.faults();
  const auto templates = library::read_schema(world, "template-1.xsd");
  if (!templates) return templates.faults();
  const auto words =
      library::read_words(world, record->root().attribute("lang").value(), *templates);
  if (!words) return words.faults();
  const std::string kind = record->root().child("reel").child("kind").text().get();
  auto known = knowledge::load(world.files, world.data, kind);
  auto lore = std::make_shared<Lore>();
  if (known) {
    lore->knowledge = std::move(known).value();
    lore->springs.parts = knowledge::parts_list(lore->knowledge, kind);
  }
  lore->springs.caution = words->say("strip.spring-caution");
  lore->springs.pieces_caution = words->say("strip.spring-pieces-caution");
  return lore;
}

/// Only tells what would fly and what must stay.
Exit ask(const Options& options, Surroundings& surroundings) {
  const library::World world{surroundings.files, surroundings.data, surroundings.version};
  const auto tried = daybook::edit(world, {options.writing.path, surroundings.command_line, true},
                                   daybook::strip(options.request));
  if (!tried) return tell(tried.faults(), surroundings.err);
  if (tried->warnings.empty()) surroundings.out << "nothing flies that the record knows of\n";
  return tell(tried->warnings, surroundings.err);
}

/// Tells of springs before anything is written, to somebody at a terminal who can still stop.
bool goes_on(const Options& options, const daybook::Change& change, Surroundings& surroundings) {
  if (surroundings.terminal == nullptr || options.writing.dry_run) return true;
  const library::World world{surroundings.files, surroundings.data, surroundings.version};
  const auto tried =
      daybook::edit(world, {options.writing.path, surroundings.command_line, true}, change);
  if (!tried) return true;
  base::Diagnostics springs;
  for (const base::Diagnostic& one : tried->warnings) {
    if (one.rule == "spring") springs.push_back(one);
  }
  if (springs.empty()) return true;
  static_cast<void>(tell(springs, surroundings.err));
  return go_on("Enter to go on, Ctrl-D to leave it for now:", surroundings);
}

Exit tell_strip(Options options, Surroundings& surroundings) {
  if (options.request.step.empty() && !options.ask) {
    Questions questions(surroundings);
    questions.need("WHAT", "What is done in this step?", options.request.what);
    if (!questions.faults().empty()) return tell(questions.faults(), surroundings.err);
  }
  const auto day = day_of(options.writing, surroundings);
  if (!day) return tell(day.faults(), surroundings.err);
  options.request.on = *day;
  const auto lore = read_lore(options.writing.path, surroundings);
  if (!lore) return tell(lore.faults(), surroundings.err);
  options.request.lore = (*lore)->springs;
  if (options.ask) {
    options.writing.dry_run = true;
    options.request.what = "asked";
    return ask(options, surroundings);
  }
  const daybook::Change change = daybook::strip(std::move(options.request));
  if (!goes_on(options, change, surroundings)) {
    surroundings.out << "nothing was written\n";
    return kFine;
  }
  return write(options.writing, change, surroundings);
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
  app.add_option("--found", options->request.found,
                 "a part that lay loose and is found in this step");
  app.add_flag("--ask", options->ask,
               "only tell what flies when the parts of --off come off; nothing is written");
  app.add_option("--orientation", options->request.orientation, "which way up, which face out");
  app.add_option("--tool", options->request.tool, "the tool");
  app.add_flag("--spring", options->request.spring, "a spring comes free in this step");
  app.add_option("--caution", options->request.caution, "a caution: \"Springs: cover it\"");
  app.add_option("--photo", options->request.photos, "a photograph of the step");
  return [options](Surroundings& surroundings) { return tell_strip(*options, surroundings); };
}

}  // namespace winchbook::cli
