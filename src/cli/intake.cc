#include "daybook/entries/intake.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <string>
#include <utility>

#include "answers/advise.h"
#include "cli/writing.h"

namespace winchbook::cli {
namespace {

struct Options {
  WritingOptions writing;
  daybook::IntakeRequest request;
  std::string like;
  std::string bench_of;
  std::string rank;
  bool again = false;
};

void ask(Options& options, Questions& questions) {
  daybook::IntakeRequest& request = options.request;
  if (options.again) return;
  if (options.like.empty()) {
    questions.need("--kind",
                   "Which kind: multiplier, baitcaster, fixed-spool, closed-face, centrepin, "
                   "sidecast, fly-reel, plain-winch, wooden-reel?",
                   request.kind);
  }
  questions.need("--owner", "Whose is it?", request.owner.name);
  if (!options.like.empty() || !options.bench_of.empty()) return;
  questions.need("--bench", "What is the bench called (or --bench-of a reel of yours)?",
                 request.bench);
  questions.need("--bench-place", "Where does the bench stand?", request.bench_place);
  questions.need("--restorer", "Who works on it?", request.restorer);
}

Exit tell_intake(Options options, Surroundings& surroundings) {
  Questions questions(surroundings);
  ask(options, questions);
  if (!questions.faults().empty()) return tell(questions.faults(), surroundings.err);
  const auto day = day_of(options.writing, surroundings);
  if (!day) return tell(day.faults(), surroundings.err);
  daybook::IntakeRequest& request = options.request;
  auto ranking = answers::parse_ranking(options.rank);
  if (!ranking) return tell(ranking.faults(), surroundings.err);
  request.ranking = std::move(ranking).value();
  request.on = *day;
  request.folder = options.writing.path;
  request.dry_run = options.writing.dry_run;
  request.command = surroundings.command_line;
  request.like = options.like;
  request.bench_of = options.bench_of;
  request.draw_salt = surroundings.draw_salt;
  if (options.again)
    return write(options.writing, daybook::intake_again(std::move(request)), surroundings);
  const library::World world{surroundings.files, surroundings.data, surroundings.version};
  return tell_edited(daybook::intake(world, request), request.dry_run, surroundings);
}

void add_reel_options(CLI::App& app, Options& options) {
  daybook::IntakeRequest& request = options.request;
  app.add_option("--like", options.like,
                 "an earlier reel of the model: its places, steps and what was fitted before");
  app.add_option("--bench-of", options.bench_of,
                 "a reel of yours, for the bench and its restorers");
  app.add_option("--bench", request.bench, "or the bench's name");
  app.add_option("--bench-place", request.bench_place, "where the bench stands");
  app.add_option("--bench-address", request.bench_address, "its address, as on a receipt");
  app.add_option("--bench-contact", request.bench_contact, "how to reach the bench");
  app.add_option("--restorer", request.restorer, "who works on it");
  app.add_option("--kind", request.kind, "the kind of reel, as in shared/parts/");
  app.add_option("--brake", request.brake, "star, lever, click or none");
  app.add_option("--maker", request.maker, "the maker's name");
  app.add_option("--maker-place", request.maker_place, "where the works stood");
  app.add_option("--model", request.model, "the maker's name for the model");
  app.add_option("--name", request.name, "what the documents call it; left out, the model");
  app.add_flag("--all-places", request.all_places,
               "every place of the parts list; left out, the eight that weigh most");
  app.add_flag("--no-places", request.no_places, "no place yet: winchbook part enters them");
  app.add_option("--lang", request.language, "the language of your own words: en-GB");
}

void add_owner_options(CLI::App& app, Options& options) {
  daybook::IntakeRequest& request = options.request;
  app.add_option("--owner", request.owner.name, "the owner's full name");
  app.add_option("--owner-id", request.owner.id, "their id in the record");
  app.add_option("--owner-who", request.owner.who, "who they are to the reel");
  app.add_option("--owner-short", request.owner.short_name, "how the family calls them");
  app.add_option("--owner-stand-in", request.owner.stand_in,
                 "printed where the name is withheld; left out, the owner");
  app.add_option("--owner-address", request.owner.address, "where they live");
  app.add_option("--owner-contact", request.owner.contact, "how to reach them");
  app.add_option("--owner-named-to", request.owner.named_to,
                 "who may read the name: anyone, insurer or owner (left out, owner)");
  app.add_option("--arrived", request.arrived, "how it came");
  app.add_option("--use", request.use, "fish, show, fish-and-show, sell, keep");
  app.add_option("--wish", request.wish, "the wishes in the owner's words");
  app.add_option("--rank", options.rank,
                 "what matters to the owner, the most important first: "
                 "memory,use,originality,value,way-back,cost");
  app.add_option("--promised-by", request.promised_by, "when it is promised");
  app.add_option("--may-be-done", request.agreed.may_be_done,
                 "what may be done; as often as needed");
  app.add_option("--must-stay", request.agreed.must_stay, "what must stay, in words");
  app.add_option("--part-must-stay", request.agreed.parts_must_stay,
                 "a part that must stay fitted");
  app.add_option("--may-leave", request.agreed.parts_may_leave,
                 "a part that the bench may keep or scrap");
  app.add_option("--agreement-id", request.agreed.id,
                 "the id of that agreement; left out, ag-intake");
  app.add_option("--agreement-note", request.agreed.note, "a note on it");
  app.add_option("--limit", request.agreed.limit, "what it may cost: \"40 GBP\"");
  app.add_option("--estimate", request.agreed.estimate,
                 "what the bench thinks it will cost: \"30 to 40 GBP\"");
  app.add_option("--number", request.number, "the bench's own number of the job: 26-014");
  app.add_option("--how", request.agreed.how, "how that was agreed; left out, in person");
  app.add_flag("--again", options.again, "a further visit of a reel that has its record");
}

}  // namespace

Action add_intake(CLI::App& app) {
  auto options = std::make_shared<Options>();
  options->request.owner.stand_in = "the owner";
  add_writing_options(app, options->writing);
  add_reel_options(app, *options);
  add_owner_options(app, *options);
  return [options](Surroundings& surroundings) { return tell_intake(*options, surroundings); };
}

}  // namespace winchbook::cli
