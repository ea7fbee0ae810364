#include "daybook/entries/fit.h"

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
  daybook::FitRequest request;
  bool fresh = false;
  bool used = false;
  bool made = false;
};

Exit tell_fit(Options options, Surroundings& surroundings) {
  if (int{options.fresh} + int{options.used} + int{options.made} > 1) {
    return tell({base::error("a part is new, used or made, and only one of them",
                             "give one of --new, --used and --made", "command-state")},
                surroundings.err);
  }
  options.request.state = options.fresh  ? "new"
                          : options.used ? "used"
                          : options.made ? "made"
                                         : "";
  if (!options.request.instead_of.empty() && options.request.old_to == "bagged") {
    Questions label(surroundings);
    label.need("--label", "In which bag is the old part?", options.request.bag);
    if (!label.faults().empty()) return tell(label.faults(), surroundings.err);
  }
  Questions questions(surroundings);
  questions.need("NAME", "What is fitted?", options.request.name);
  questions.need("--place", "In which place?", options.request.place);
  if (!options.request.known)
    questions.need("--material", "Of what is it?", options.request.material);
  questions.need("--why", "Why is it fitted?", options.request.why);
  questions.need("--way-back", "How far can it be undone: \"100: Fully.\"?",
                 options.request.way_back);
  if (!questions.faults().empty()) return tell(questions.faults(), surroundings.err);
  const auto day = day_of(options.writing, surroundings);
  if (!day) return tell(day.faults(), surroundings.err);
  options.request.on = *day;
  const std::string agreed = options.request.agreed;
  const auto make = [request = std::move(options.request)](const std::string& given) {
    daybook::FitRequest wanted = request;
    wanted.agreed = given;
    return daybook::fit(std::move(wanted));
  };
  return write_within_limits(options.writing, make, agreed, surroundings);
}

}  // namespace

Action add_fit(CLI::App& app) {
  auto options = std::make_shared<Options>();
  add_writing_options(app, options->writing);
  app.add_option("NAME", options->request.name, "what is fitted: \"Pinion\"");
  add_id_option(app, options->request.id);
  app.add_flag("--known", options->request.known,
               "it is in the record and not in the reel: a spare, or an old part from its bag");
  app.add_option("--place", options->request.place, "the place it goes into");
  app.add_option("--instead-of", options->request.instead_of,
                 "the old part; left out, the place was empty");
  app.add_option("--material", options->request.material, "of what it is");
  app.add_option("--count", options->request.count, "how many like things it is")
      ->check(CLI::Range(1, 1000));
  app.add_option("--donor", options->request.donor,
                 "what it came from: \"a broken Skerry No. 30\"");
  app.add_flag("--same-maker", options->request.same_maker, "the donor is by the reel's own maker");
  app.add_option("--made-by", options->request.made_by,
                 "this-maker, another, bench, owner or not-determined");
  app.add_option("--maker-name", options->request.maker_name, "another maker's name");
  app.add_option("--pattern", options->request.pattern,
                 "right, running-change, service-spare, wrong or not-determined");
  app.add_option("--certainty", options->request.certainty, "certain, likely or possible");
  app.add_flag("--new", options->fresh, "it is new");
  app.add_flag("--used", options->used, "it was used before");
  app.add_flag("--made", options->made, "it was made for this reel");
  app.add_option("--cost", options->request.cost, "what the donor cost: \"35 GBP\"");
  app.add_option("--why", options->request.why, "why it is fitted");
  app.add_option("--adaptation", options->request.adaptation, "what was altered for it");
  app.add_flag("--reel-altered", options->request.reel_altered,
               "something of the reel itself was cut, bored or bent for it");
  app.add_option("--bore", options->request.bore, "of the seat, in mm");
  app.add_option("--outside", options->request.outside, "of the seat, in mm");
  app.add_option("--depth", options->request.depth, "of the seat, in mm");
  app.add_option("--seat-note", options->request.seat_note, "a note on the seat");
  app.add_option("--way-back", options->request.way_back,
                 "how far it can be undone: \"100: Fully. The old one drops in.\"");
  app.add_option("--old-to", options->request.old_to,
                 "where the old part goes: bagged, to-owner, kept-by-bench, lost, scrapped");
  app.add_option("--label", options->request.bag, "the label of the old part's bag: \"bag 3\"");
  app.add_option("--agreed", options->request.agreed,
                 "the agreement that allows what a limit forbids");
  app.add_option("--note", options->request.note, "a note on the part");
  app.add_option("--photo", options->request.photos, "a photograph of the new part");
  app.add_option("--old-photo", options->request.old_photos, "a photograph of the old part");
  return [options](Surroundings& surroundings) { return tell_fit(*options, surroundings); };
}

}  // namespace winchbook::cli
