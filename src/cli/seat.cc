#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <ostream>
#include <string>

#include "answers/seat.h"
#include "cli/command.h"
#include "cli/measures.h"
#include "cli/writing.h"
#include "daybook/entries/seat_choice.h"

namespace winchbook::cli {
namespace {

using assess::fitting::Gauge;
using assess::fitting::Turns;
using base::Dimension;

struct Options {
  std::string bore;
  std::string sleeve;
  std::string depth;
  std::string flats;
  std::string post;
  std::string spacer;
  std::string housing;
  std::string sunk;
  std::string tolerance = "0.1 mm";
  std::string stack;
  std::string stock;
  std::string held = "free";
  std::string thickness;
  std::string material;
  int count = 0;
  bool metal = false;
  bool json = false;

  WritingOptions writing;  // for a choice
  daybook::SeatChoice choice;
};

Turns turns_of(const std::string& held) {
  if (held == "gear") return Turns::with_gear;
  return held == "sleeve" ? Turns::with_sleeve : Turns::freely;
}

answers::SeatRequest request_of(const Options& options, Measures& measures) {
  answers::SeatRequest request;
  const double tolerance = measures.given("--tolerance", options.tolerance, Dimension::length, true)
                               .value_or(base::Measure{})
                               .value;
  const auto gauge = [&](const base::Measure& measure) {
    return Gauge{measure.value, measure.tolerance > 0 ? measure.tolerance : tolerance};
  };
  const auto maybe = [&](std::string_view option, const std::string& text,
                         bool may_be_below = false) {
    const auto measure = measures.given(option, text, Dimension::length, may_be_below);
    return measure ? std::optional(gauge(*measure)) : std::nullopt;
  };
  request.caliper = tolerance;
  request.seat.bore = gauge(measures.needed_measure("--bore", options.bore, Dimension::length));
  request.seat.sleeve =
      gauge(measures.needed_measure("--sleeve", options.sleeve, Dimension::length));
  request.seat.depth = maybe("--depth", options.depth);
  request.seat.flats = maybe("--flats", options.flats);
  request.seat.post = maybe("--post", options.post);
  request.seat.spacer = maybe("--spacer", options.spacer);
  request.seat.housing = maybe("--housing", options.housing);
  request.seat.sunk = maybe("--sunk", options.sunk, true);
  request.stack = options.stack;
  request.stock = options.stock;
  request.material = options.material;
  request.wanted.metal = options.metal;
  request.wanted.turns = turns_of(options.held);
  request.wanted.count = options.count;
  if (const auto thickness = measures.given("--thickness", options.thickness, Dimension::length)) {
    request.wanted.thickness = thickness->value;
  }
  return request;
}

/// Writes the chosen washer into the record.
Exit choose(const Options& options, const answers::SeatAnswer& answer, Surroundings& surroundings) {
  daybook::SeatChoice choice = options.choice;
  Questions questions(surroundings);
  questions.need("--why", "Why is it fitted?", choice.said.why);
  questions.need("--way-back", "How far can it be undone: \"100: Fully.\"?", choice.said.way_back);
  questions.need("--label", "In which bag is the old part?", choice.said.bag);
  if (!questions.faults().empty()) return tell(questions.faults(), surroundings.err);
  const auto day = day_of(options.writing, surroundings);
  if (!day) return tell(day.faults(), surroundings.err);
  choice.said.on = *day;
  const auto change = daybook::fit_choice(
      {answer.request.seat, answer.request.caliper, answer.request.wanted.count, answer.candidates},
      std::move(choice));
  if (!change) return tell(change.faults(), surroundings.err);
  return write(options.writing, *change, surroundings);
}

/// Which options want which.
base::Diagnostics wanting(const Options& options) {
  base::Diagnostics faults;
  const auto want = [&](bool there, const char* message, const char* cure) {
    if (!there) faults.push_back(base::error(message, cure, "command-missing"));
  };
  const bool record = !options.writing.path.empty();
  want(
      record == !options.choice.part.empty(), "--record and --part go together",
      "name the reel's folder with --record, and with --part the part whose place is to be filled");
  want(record || options.choice.line == 0, "--choose writes into a record, and none is named",
       "add --record and --part");
  want(options.choice.line == 0 || !options.stock.empty(), "--choose takes a line of the stock",
       "name the stock's file with --stock");
  return faults;
}

Exit seat(const Options& options, Surroundings& surroundings) {
  Measures measures;
  answers::SeatRequest request = request_of(options, measures);
  if (!measures.faults().empty()) return wrong_command(measures.faults(), surroundings.err);
  if (const auto faults = wanting(options); !faults.empty()) {
    return wrong_command(faults, surroundings.err);
  }
  const library::World world{surroundings.files, surroundings.data, surroundings.version};
  if (!options.writing.path.empty()) {
    const auto count = daybook::count_of_part(world, options.writing.path, options.choice.part);
    if (!count) return tell(count.faults(), surroundings.err);
    if (request.wanted.count == 0) request.wanted.count = *count;
  }
  const auto answer = answers::find_seat(world, std::move(request));
  if (!answer) return tell(answer.faults(), surroundings.err);
  if (options.choice.line > 0) return choose(options, *answer, surroundings);
  surroundings.out << (options.json ? answers::seat_as_json(*answer)
                                    : answers::seat_in_words(*answer));
  return kFine;
}

}  // namespace

Action add_seat(CLI::App& app) {
  auto options = std::make_shared<Options>();
  app.add_option("--bore", options->bore, "across the recess in the gear: \"22 mm\", \"7/8 in\"");
  app.add_option("--sleeve", options->sleeve, "across the sleeve that the washers go round");
  app.add_option("--depth", options->depth, "of the recess, from its floor to its rim");
  app.add_option("--flats", options->flats, "across the flats of the sleeve");
  app.add_option("--post", options->post, "height of the fixed post over the recess's floor");
  app.add_option("--spacer", options->spacer, "height of the loose spacer that the star presses");
  app.add_option("--housing", options->housing,
                 "height of the housing's rim over the recess's floor");
  app.add_option("--sunk", options->sunk,
                 "with the star off: how far the spacer stands below the rim of the housing");
  app.add_option("--tolerance", options->tolerance,
                 "how far a figure of the calipers may be off either way; left out, 0.1 mm");
  app.add_option("--stack", options->stack,
                 "the washers from the gear's floor outwards, or a CSV file of them: "
                 "\"red fibre free 1.3 mm, steel gear 0.9 mm\"");
  app.add_option("--stock", options->stock, "your stock of washers: CSV or XML");
  app.add_option("--held", options->held, "what holds the wanted washer: free, gear or sleeve")
      ->check(CLI::IsMember({"free", "gear", "sleeve"}));
  app.add_flag("--metal", options->metal, "a metal washer is wanted, not a friction washer");
  app.add_option("--count", options->count,
                 "how many are wanted; left out, the stack's friction washers")
      ->check(CLI::Range(1, 1000));
  app.add_option("--thickness", options->thickness,
                 "of each washer it replaces; left out, the stack's");
  app.add_option("--material", options->material, "look at washers of this material alone");
  app.add_flag("--json", options->json, "the answer as JSON (schemas/seat.schema.json)");
  app.add_option("--record", options->writing.path, "the reel's folder, or its record.xml");
  app.add_option("--part", options->choice.part,
                 "the part whose place is to be filled; so many as there are of it are wanted");
  app.add_option("--choose", options->choice.line,
                 "write into the record that the washers of this line of the stock are fitted")
      ->check(CLI::Range(1, 1'000'000'000));
  app.add_option("--name", options->choice.said.name, "what they are called there");
  app.add_option("--why", options->choice.said.why, "why they are fitted");
  app.add_option("--way-back", options->choice.said.way_back,
                 "how far it can be undone: \"100: Fully. They lift out.\"");
  app.add_option("--label", options->choice.said.bag, "the label of the old part's bag: \"bag 3\"");
  app.add_option("--pattern", options->choice.said.pattern,
                 "right, running-change, service-spare, wrong or not-determined");
  app.add_option("--maker-name", options->choice.said.maker_name, "another maker's name");
  app.add_option("--photo", options->choice.said.photos, "a photograph of the new part");
  app.add_option("--on", options->writing.on,
                 "the day of the entry, as 2026-06-19; left out, today");
  app.add_flag("--dry-run", options->writing.dry_run, "print what would change, and write nothing");
  return [options](Surroundings& surroundings) { return seat(*options, surroundings); };
}

}  // namespace winchbook::cli
