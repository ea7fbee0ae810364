#include "daybook/entries/clean.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <istream>
#include <memory>
#include <ostream>
#include <string>
#include <utility>

#include "cli/writing.h"

namespace winchbook::cli {
namespace {

struct Options {
  WritingOptions writing;
  daybook::CleanRequest request;
};

/// Asks somebody at a terminal why it is done in spite of what the care table says. False: it is
/// left alone.
bool reason_given(Options& options, Surroundings& surroundings) {
  if (surroundings.terminal == nullptr || !options.request.against_warning.empty()) return true;
  const library::World world{surroundings.files, surroundings.data, surroundings.version};
  const auto tried = daybook::edit(world, {options.writing.path, surroundings.command_line, true},
                                   daybook::clean(options.request));
  if (tried) return true;
  base::Diagnostics objections;
  for (const base::Diagnostic& one : tried.faults()) {
    if (one.rule == "care" && one.severity == base::Severity::error) objections.push_back(one);
  }
  if (objections.empty()) return true;
  static_cast<void>(tell(objections, surroundings.err));
  surroundings.err << "Why is it done all the same (nothing, to leave it)? ";
  surroundings.err.flush();
  return std::getline(*surroundings.terminal, options.request.against_warning) &&
         !options.request.against_warning.empty();
}

Exit tell_clean(Options options, Surroundings& surroundings) {
  Questions questions(surroundings);
  questions.need("--method", "How was it cleaned?", options.request.method);
  if (!questions.faults().empty()) return tell(questions.faults(), surroundings.err);
  const auto day = day_of(options.writing, surroundings);
  if (!day) return tell(day.faults(), surroundings.err);
  options.request.on = *day;
  const library::World world{surroundings.files, surroundings.data, surroundings.version};
  auto care = daybook::care_asker(world);
  if (!care) return tell(care.faults(), surroundings.err);
  options.request.care = std::move(care).value();
  if (!reason_given(options, surroundings)) return kRecordWrong;
  const std::string agreed = options.request.agreed;
  const auto make = [request = std::move(options.request)](const std::string& given) {
    daybook::CleanRequest wanted = request;
    wanted.agreed = given;
    return daybook::clean(std::move(wanted));
  };
  return write_within_limits(options.writing, make, agreed, surroundings);
}

}  // namespace

Action add_clean(CLI::App& app) {
  auto options = std::make_shared<Options>();
  add_writing_options(app, options->writing);
  app.add_option("PARTS", options->request.parts, "the parts: ids, beginnings of ids, or names");
  app.add_flag("--all", options->request.all, "every part in the reel");
  app.add_option("--method", options->request.method, "how, as \"damp cloth, dried at once\"");
  app.add_option("--material", options->request.material, "of what; left out, that of the parts");
  app.add_option("--minutes", options->request.minutes, "for how long");
  app.add_option("--what", options->request.what,
                 "what was done, in a sentence; left out, the method says it");
  app.add_option("--caution", options->request.caution,
                 "a caution beside it: \"Bath: gloves; dry bare steel at once\"");
  app.add_option("--against-warning", options->request.against_warning,
                 "the reason for doing it in spite of a warning");
  app.add_option("--agreed", options->request.agreed,
                 "the agreement that allows what a limit forbids");
  app.add_option("--loss", options->request.loss, "finish that came away");
  app.add_option("--way-back", options->request.way_back,
                 "how far it can be undone: \"100: Fully.\"");
  return [options](Surroundings& surroundings) { return tell_clean(*options, surroundings); };
}

}  // namespace winchbook::cli
