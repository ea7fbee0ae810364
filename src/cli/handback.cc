#include "daybook/entries/handback.h"

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
  daybook::HandbackRequest request;
};

Exit tell_handback(Options options, Surroundings& surroundings) {
  const auto day = day_of(options.writing, surroundings);
  if (!day) return tell(day.faults(), surroundings.err);
  options.request.on = *day;
  return write(options.writing, daybook::hand_back(std::move(options.request)), surroundings);
}

}  // namespace

Action add_handback(CLI::App& app) {
  auto options = std::make_shared<Options>();
  add_writing_options(app, options->writing);
  app.add_option("--to", options->request.to, "to whom; left out, who brought it");
  app.add_option("--bag", options->request.bags,
                 "a bag that goes with it; left out, every bag in use");
  app.add_option("--note", options->request.note, "a note");
  app.add_option("--summary", options->request.summary, "the visit in a sentence or two");
  app.add_option("--next-service", options->request.next_service,
                 "when it should be seen again: 2029");
  app.add_option("--review-by", options->request.review_by,
                 "when its use should be thought over again");
  app.add_option("--not-put-right", options->request.not_put_right,
                 "what could not be put right; as often as needed");
  app.add_option("--drag", options->request.drag,
                 "how hard the drag may be set, at the line: \"8 to 14 N\"");
  app.add_option("--line", options->request.line, "which line, and how much");
  app.add_option("--fish", options->request.fish, "a counsel for fishing it; as often as needed");
  app.add_option("--keep", options->request.keep, "a counsel for keeping it; as often as needed");
  app.add_option("--caution", options->request.cautions,
                 "a caution in use: \"The crack: watch it\"; as often as needed");
  return [options](Surroundings& surroundings) { return tell_handback(*options, surroundings); };
}

}  // namespace winchbook::cli
