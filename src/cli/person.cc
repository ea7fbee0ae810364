#include "daybook/entries/person.h"

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
  daybook::PersonRequest request;
};

Exit tell_person(Options options, Surroundings& surroundings) {
  Questions questions(surroundings);
  questions.need("NAME", "What is the full name?", options.request.name);
  if (!options.request.known) {
    questions.need("--stand-in", "What is printed where the name is withheld?",
                   options.request.stand_in);
  }
  if (!questions.faults().empty()) return tell(questions.faults(), surroundings.err);
  options.request.salt = surroundings.draw_salt();
  return write(options.writing, daybook::person(std::move(options.request)), surroundings);
}

}  // namespace

Action add_person(CLI::App& app) {
  auto options = std::make_shared<Options>();
  add_writing_options(app, options->writing);
  app.add_option("NAME", options->request.name, "the full name; with --known, as you call them");
  add_id_option(app, options->request.id);
  app.add_flag("--known", options->request.known, "they are in the record: set what is given");
  app.add_option("--short", options->request.short_name, "how the family calls them");
  app.add_option("--stand-in", options->request.stand_in,
                 "printed where the name is withheld: \"the first owner\"");
  app.add_option("--who", options->request.who, "who they are to the reel");
  app.add_option("--address", options->request.address, "where they live");
  app.add_option("--contact", options->request.contact, "how to reach them");
  app.add_option("--lived", options->request.lived, "from birth to death: 1911/1983");
  app.add_option("--named-to", options->request.named_to,
                 "who may read the name: anyone, insurer or owner (left out, owner)");
  return [options](Surroundings& surroundings) { return tell_person(*options, surroundings); };
}

}  // namespace winchbook::cli
