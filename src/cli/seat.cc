#include "app/seat.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <ostream>
#include <string>

#include "cli/command.h"
#include "cli/measures.h"

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
  int count = 0;
  bool metal = false;
  bool json = false;
};

Turns turns_of(const std::string& held) {
  if (held == "gear") return Turns::with_gear;
  return held == "sleeve" ? Turns::with_sleeve : Turns::freely;
}

app::SeatRequest request_of(const Options& options, Measures& measures) {
  app::SeatRequest request;
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
  request.wanted.metal = options.metal;
  request.wanted.turns = turns_of(options.held);
  request.wanted.count = options.count;
  if (const auto thickness = measures.given("--thickness", options.thickness, Dimension::length)) {
    request.wanted.thickness = thickness->value;
  }
  return request;
}

Exit seat(const Options& options, Surroundings& surroundings) {
  Measures measures;
  app::SeatRequest request = request_of(options, measures);
  if (!measures.faults().empty()) return wrong_command(measures.faults(), surroundings.err);
  const app::World world{surroundings.files, surroundings.data, surroundings.version};
  const auto answer = app::find_seat(world, std::move(request));
  if (!answer) return tell(answer.faults(), surroundings.err);
  surroundings.out << (options.json ? app::seat_as_json(*answer) : app::seat_in_words(*answer));
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
  app.add_flag("--json", options->json, "the answer as JSON (schemas/seat.schema.json)");
  return [options](Surroundings& surroundings) { return seat(*options, surroundings); };
}

}  // namespace winchbook::cli
