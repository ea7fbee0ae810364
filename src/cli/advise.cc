#include "answers/advise.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <ostream>
#include <string>
#include <utility>

#include "cli/measures.h"
#include "cli/valuing.h"
#include "cli/writing.h"
#include "daybook/entries/decide.h"

namespace winchbook::cli {
namespace {

struct Options {
  WritingOptions writing;
  daybook::DecideRequest decide;
  std::string rank;
  ValuingOptions valuing;
  bool json = false;
};

Exit advise(const Options& options, Surroundings& surroundings) {
  const auto ranking = answers::parse_ranking(options.rank);
  if (!ranking) return tell(ranking.faults(), surroundings.err);
  const auto terms = terms_of(options.valuing);
  if (!terms) return wrong_command(terms.faults(), surroundings.err);
  const answers::ValueRequest request{options.writing.path, *terms, surroundings.today};
  const library::World world{surroundings.files, surroundings.data, surroundings.version};
  const auto advised = answers::advise(world, request, *ranking);
  if (!advised) return tell(advised.faults(), surroundings.err);
  surroundings.out << (options.json ? answers::advice_as_json(*advised)
                                    : answers::advice_in_words(*advised));
  return kFine;
}

Exit tell_decide(Options options, Surroundings& surroundings) {
  const auto day = day_of(options.writing, surroundings);
  if (!day) return tell(day.faults(), surroundings.err);
  options.decide.on = *day;
  return write(options.writing, daybook::decide(std::move(options.decide)), surroundings);
}

void add_decide_options(CLI::App& app, daybook::DecideRequest& decide) {
  app.add_option(
      "--set", decide.advised,
      "write down what the bench advises: keep-as-found, clean-for-show, make-it-fish or "
      "rebuild-to-fish");
  app.add_option("--because", decide.because, "why the bench advises it");
  app.add_option("--cost", decide.costs,
                 "what a course costs and does: \"make-it-fish: 260 to 340 GBP: nothing is lost\"");
  app.add_option("--decide", decide.chosen, "write down the course that the owner chose");
  app.add_option("--decided-by", decide.chosen_by, "who chose; left out, who brought the reel");
  app.add_option("--why", decide.chosen_because, "why, in the owner's words");
}

}  // namespace

Action add_advise(CLI::App& app) {
  auto options = std::make_shared<Options>();
  add_writing_options(app, options->writing);
  app.add_option(
      "--rank", options->rank,
      "what matters, the most important first: memory,use,originality,value,way-back,cost; "
      "left out, the owner's ranking in the record");
  add_valuing_options(app, options->valuing, "those in the record", "today");
  app.add_flag("--json", options->json, "the answer as JSON (schemas/advise.schema.json)");
  add_decide_options(app, options->decide);
  return [options](Surroundings& surroundings) {
    const daybook::DecideRequest& decide = options->decide;
    const bool writes = !decide.advised.empty() || !decide.costs.empty() || !decide.chosen.empty();
    return writes ? tell_decide(*options, surroundings) : advise(*options, surroundings);
  };
}

}  // namespace winchbook::cli
