#include "daybook/entries/mark.h"

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
  daybook::MarkRequest request;
};

Exit tell_mark(Options options, Surroundings& surroundings) {
  Questions questions(surroundings);
  questions.need("TEXT", "What does it say?", options.request.text);
  questions.need("--part", "On which part?", options.request.part);
  if (!questions.faults().empty()) return tell(questions.faults(), surroundings.err);
  options.request.salt = surroundings.draw_salt();
  return write(options.writing, daybook::mark(std::move(options.request)), surroundings);
}

}  // namespace

Action add_mark(CLI::App& app) {
  auto options = std::make_shared<Options>();
  add_writing_options(app, options->writing);
  app.add_option("TEXT", options->request.text, "as read; [ ] round what is guessed");
  add_id_option(app, options->request.id);
  app.add_option("--part", options->request.part, "the part that bears it");
  app.add_option("--where", options->request.where, "where on the part: underside");
  app.add_option(
      "--method", options->request.method,
      "stamped, cast, moulded, engraved, transfer, paper, painted, etched, pencilled, other");
  app.add_option("--whose", options->request.whose,
                 "maker, retailer, owner, repairer, assembler, not-determined");
  app.add_option("--state", options->request.state,
                 "as-struck, recut, filed-off, worn, not-determined");
  app.add_option("--legibility", options->request.legibility, "clear, in-part, not-legible");
  app.add_option("--person", options->request.person, "whom it names; withheld with that person");
  app.add_option("--claims", options->request.claims, "the date it claims");
  app.add_option("--cut", options->request.cut, "when it may have been cut");
  app.add_option("--not-before", options->request.not_before,
                 "the part is not older: \"1940-01 hard\"");
  app.add_option("--not-after", options->request.not_after,
                 "the part is not younger: \"1949 soft\"");
  app.add_option("--because", options->request.because, "why it says so");
  app.add_option("--source", options->request.source, "where that is to be found");
  app.add_option("--note", options->request.note, "a note");
  app.add_option("--photo", options->request.photos, "a photograph of it");
  app.add_flag("--serial", options->request.serial, "it is the reel's serial number");
  return [options](Surroundings& surroundings) { return tell_mark(*options, surroundings); };
}

}  // namespace winchbook::cli
