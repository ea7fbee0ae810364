#include "answers/grade.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <ostream>
#include <string>
#include <utility>
#include <vector>

#include "cli/evidence.h"
#include "cli/writing.h"
#include "daybook/entries/grade_set.h"

namespace winchbook::cli {
namespace {

struct Options {
  WritingOptions writing;
  bool json = false;
  daybook::GradeRequest set;
  daybook::FaultRequest fault;
  daybook::FlagRequest flag;
  std::string place;
  std::string findings_note;
};

Exit grade(const Options& options, Surroundings& surroundings) {
  const library::World world{surroundings.files, surroundings.data, surroundings.version};
  const auto graded = answers::grade(world, options.writing.path);
  if (!graded) return tell(graded.faults(), surroundings.err);
  static_cast<void>(tell(graded->loaded.warnings, surroundings.err));
  surroundings.out << (options.json ? answers::grade_as_json(*graded)
                                    : answers::grade_in_words(*graded));
  return kFine;
}

Exit set_grade(Options options, Surroundings& surroundings) {
  if (options.set.parts.empty() && !options.set.rest) {
    return tell({base::error("no part is named", "name the parts to grade, or say --rest",
                             "command-parts")},
                surroundings.err);
  }
  const auto day = day_of(options.writing, surroundings);
  if (!day) return tell(day.faults(), surroundings.err);
  options.set.on = *day;
  return write(options.writing, daybook::set_grade(std::move(options.set)), surroundings);
}

Exit add_fault(Options options, Surroundings& surroundings) {
  if (options.set.parts.size() > 1) {
    return tell({base::error("a fault is of one part, or of the reel as a whole", "name one part",
                             "command-parts")},
                surroundings.err);
  }
  Questions questions(surroundings);
  questions.need("--fault-name", "What is the fault called?", options.fault.name);
  if (!questions.faults().empty()) return tell(questions.faults(), surroundings.err);
  const auto day = day_of(options.writing, surroundings);
  if (!day) return tell(day.faults(), surroundings.err);
  options.fault.on = *day;
  options.fault.photos = options.set.evidence.photos;
  if (!options.set.parts.empty()) options.fault.part = options.set.parts.front();
  return write(options.writing, daybook::add_fault(std::move(options.fault)), surroundings);
}

Exit add_flag(Options options, Surroundings& surroundings) {
  Questions questions(surroundings);
  questions.need("--flag-name", "What is the flag called?", options.flag.name);
  questions.need("--what", "What was seen?", options.fault.what);
  if (!questions.faults().empty()) return tell(questions.faults(), surroundings.err);
  const auto day = day_of(options.writing, surroundings);
  if (!day) return tell(day.faults(), surroundings.err);
  options.flag.on = *day;
  options.flag.what = options.fault.what;
  options.flag.parts = options.set.parts;
  return write(options.writing, daybook::add_flag(std::move(options.flag)), surroundings);
}

Exit set_place(Options options, Surroundings& surroundings) {
  Questions questions(surroundings);
  questions.need("--set", "How is it: filled, in part, empty, not examined?", options.set.phrases);
  if (!questions.faults().empty()) return tell(questions.faults(), surroundings.err);
  const auto day = day_of(options.writing, surroundings);
  if (!day) return tell(day.faults(), surroundings.err);
  daybook::PlaceGradeRequest request{*day, options.place, options.set.phrases.front(),
                                     options.set.left, options.set.note};
  return write(options.writing, daybook::set_place_grade(std::move(request)), surroundings);
}

Exit set_note(const Options& options, Surroundings& surroundings) {
  const auto day = day_of(options.writing, surroundings);
  if (!day) return tell(day.faults(), surroundings.err);
  return write(options.writing, daybook::set_findings_note(*day, options.findings_note),
               surroundings);
}

void add_fault_options(CLI::App& app, Options& options) {
  app.add_option("--fault", options.fault.kind,
                 "enter a fault of the part: crack, bend, pitting, worn-teeth, broken, …");
  app.add_option("--fault-name", options.fault.name, "its name: \"hairline crack at screw 4\"");
  app.add_option("--size", options.fault.size, "how long or wide, in mm");
  app.add_option("--found-severity", options.fault.found,
                 "as found: blemish, weakening or unsafe; left out, it was not there");
  app.add_option("--left-severity", options.fault.left, "as left; left out, it was put right");
  app.add_option("--what", options.fault.what, "more of it");
  app.add_option("--stays-because", options.fault.why_it_stays, "why it was left");
}

void add_flag_options(CLI::App& app, Options& options) {
  app.add_option("--flag", options.flag.kind, "enter a flag on the parts: hazard or legal");
  app.add_option("--flag-name", options.flag.name, "its name: \"asbestos-type washers\"");
  app.add_option(
      "--place", options.place,
      "a place that no part can speak for; --set filled, in part, empty or not examined");
  app.add_option("--findings-note", options.findings_note, "a note on all that was found");
}

}  // namespace

Action add_grade(CLI::App& app) {
  auto options = std::make_shared<Options>();
  add_writing_options(app, options->writing);
  app.add_flag("--json", options->json, "the answers as JSON (schemas/grade.schema.json)");
  app.add_option("PARTS", options->set.parts, "the parts to set, or whose fault to enter");
  app.add_option("--set", options->set.phrases,
                 "what is so: \"born here, the maker's, right pattern, certain, untouched 85, worn "
                 "through 15\"");
  const auto rest = std::make_shared<std::string>();
  app.add_option("--rest", *rest, "the same of every part that is not graded yet");
  app.add_flag("--left", options->set.left, "as left; left out, as found");
  add_evidence_options(app, options->set.evidence);
  app.add_option("--note", options->set.note, "a note on the state");
  add_fault_options(app, *options);
  add_flag_options(app, *options);
  return [options, rest](Surroundings& surroundings) {
    Options given = *options;
    if (!rest->empty()) {
      given.set.rest = true;
      given.set.phrases.push_back(*rest);
    }
    if (!given.flag.kind.empty()) return add_flag(std::move(given), surroundings);
    if (!given.place.empty()) return set_place(std::move(given), surroundings);
    if (!given.findings_note.empty()) return set_note(given, surroundings);
    if (!given.fault.kind.empty()) return add_fault(std::move(given), surroundings);
    if (!given.set.phrases.empty()) return set_grade(std::move(given), surroundings);
    return grade(given, surroundings);
  };
}

}  // namespace winchbook::cli
