#include "daybook/entries/test.h"

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
  daybook::TestRequest request;
  std::string before;
  std::string after;
};

Exit tell_test(Options options, Surroundings& surroundings) {
  daybook::TestRequest& request = options.request;
  Questions questions(surroundings);
  questions.need("WHAT", "What is tested?", request.what);
  if (!options.before.empty() && !options.after.empty()) {
    questions.add(base::error("--before and --after are both given", "enter one after the other",
                              "command-test"));
  }
  request.after = request.after || !options.after.empty();
  request.reading = options.after.empty() ? options.before : options.after;
  if (!request.not_safe && !request.not_tested) {
    questions.need("--before or --after", "What did the test give?", request.reading);
  }
  if (request.not_safe) {
    questions.need("--load-limit", "Never load it beyond how much (10 N)?", request.load_limit);
  }
  if (!questions.faults().empty()) return tell(questions.faults(), surroundings.err);
  const auto day = day_of(options.writing, surroundings);
  if (!day) return tell(day.faults(), surroundings.err);
  request.on = *day;
  return write(options.writing, daybook::test(std::move(request)), surroundings);
}

}  // namespace

Action add_test(CLI::App& app) {
  auto options = std::make_shared<Options>();
  add_writing_options(app, options->writing);
  app.add_option("WHAT", options->request.what,
                 "what is tested: a usual one (" + daybook::test_words() + "), or your own words");
  app.add_option("--before", options->before,
                 "what it gave as the reel came: \"9 s\", \"3 to 22 N\", \"slips\"");
  app.add_option("--after", options->after, "what it gave as the reel left");
  app.add_option("--unit", options->request.unit, "the unit, where the reading names none");
  app.add_option("--words", options->request.words, "words beside the figures: \"slips\"");
  app.add_option("--verdict", options->request.verdict,
                 "how it works: as-made, with-care, in-part or not-working");
  app.add_flag("--left", options->request.after,
               "as the reel left, with --not-safe or --not-tested");
  app.add_flag("--not-safe", options->request.not_safe, "not safe to test");
  app.add_flag("--not-tested", options->request.not_tested, "not tested");
  app.add_option("--load-limit", options->request.load_limit,
                 "with --not-safe: never load it beyond this, \"10 N\"");
  app.add_option("--note", options->request.note, "a note");
  return [options](Surroundings& surroundings) { return tell_test(*options, surroundings); };
}

}  // namespace winchbook::cli
