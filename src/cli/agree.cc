#include "daybook/entries/agree.h"

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
  daybook::AgreeRequest request;
};

Exit tell_agree(Options options, Surroundings& surroundings) {
  Questions questions(surroundings);
  questions.need("--how", "How was it agreed: in person, by letter?", options.request.how);
  if (!questions.faults().empty()) return tell(questions.faults(), surroundings.err);
  const auto day = day_of(options.writing, surroundings);
  if (!day) return tell(day.faults(), surroundings.err);
  options.request.on = *day;
  return write(options.writing, daybook::agree(std::move(options.request)), surroundings);
}

}  // namespace

Action add_agree(CLI::App& app) {
  auto options = std::make_shared<Options>();
  add_writing_options(app, options->writing);
  add_id_option(app, options->request.id);
  app.add_option("--how", options->request.how, "in person, by letter, by telephone");
  app.add_option("--with", options->request.with, "with whom; left out, who brought the reel");
  app.add_option("--may-be-done", options->request.may_be_done,
                 "what may be done; as often as needed");
  app.add_option("--must-stay", options->request.must_stay, "what must stay, in words");
  app.add_option("--part-must-stay", options->request.parts_must_stay,
                 "a part that must stay fitted");
  app.add_option("--may-leave", options->request.parts_may_leave,
                 "a part that the bench may keep or scrap");
  app.add_option("--limit", options->request.limit, "what it may cost: \"180 GBP\"");
  app.add_option("--estimate", options->request.estimate,
                 "what the bench thinks it will cost: \"150 to 180 GBP\"");
  app.add_option("--note", options->request.note, "a note");
  app.add_option("--promised-by", options->request.promised_by, "when the reel is promised");
  app.add_option("--waiting-for", options->request.waiting_for, "what the work waits for");
  return [options](Surroundings& surroundings) { return tell_agree(*options, surroundings); };
}

}  // namespace winchbook::cli
