#include "answers/line.h"

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

using base::Dimension;

constexpr double kMetre = 1000;  // mm

struct Options {
  std::string holds;
  std::string of;
  std::string diameter;
  std::string length;
  std::string backing;
  std::string spool_full;
  std::string spool_empty;
  std::string gear;
  bool json = false;
};

Exit line(const Options& options, Surroundings& surroundings) {
  Measures measures;
  answers::LineRequest request;
  const auto length = [&](std::string_view option, const std::string& text) {
    const auto measure = measures.given(option, text, Dimension::length);
    return measure ? std::optional(measure->value) : std::nullopt;
  };
  const auto holds = length("--holds", options.holds);
  const auto of = length("--of", options.of);
  if (holds && of) request.known = assess::fitting::LineLoad{*holds / kMetre, *of};
  request.diameter = length("--diameter", options.diameter);
  if (const auto wanted = length("--length", options.length)) request.length = *wanted / kMetre;
  request.backing = length("--backing", options.backing);
  request.wound = length("--spool-full", options.spool_full);
  request.empty = length("--spool-empty", options.spool_empty);
  request.ratio = measures.ratio("--gear", options.gear);
  if (!measures.faults().empty()) return wrong_command(measures.faults(), surroundings.err);
  const answers::LineAnswer answer = answers::reckon_line(request);
  if (!answer.capacity && !answer.retrieve_full && !answer.retrieve_empty) {
    return wrong_command(
        {base::error(
            "nothing was asked that can be reckoned",
            "for how much goes on: --holds \"200 m\" --of \"0.30 mm\" --diameter \"0.20 mm\"; "
            "for a turn of the handle: --spool-full \"45 mm\" --gear 4:1",
            "command-options")},
        surroundings.err);
  }
  surroundings.out << (options.json ? answers::line_as_json(answer)
                                    : answers::line_in_words(answer));
  return kFine;
}

}  // namespace

Action add_line(CLI::App& app) {
  auto options = std::make_shared<Options>();
  app.add_option("--holds", options->holds, "a length that fills the spool: \"200 m\", \"300 yd\"");
  app.add_option("--of", options->of, "the diameter of that line: \"0.30 mm\"");
  app.add_option("--diameter", options->diameter, "of the line to put on");
  app.add_option("--length", options->length, "of the line to put on, with backing under it");
  app.add_option("--backing", options->backing, "diameter of the backing");
  app.add_option("--spool-full", options->spool_full, "across the wound line, spool full");
  app.add_option("--spool-empty", options->spool_empty, "the same, spool empty");
  app.add_option("--gear", options->gear, "turns of the spool for one of the handle: \"4:1\"");
  app.add_flag("--json", options->json, "the answer as JSON (schemas/line.schema.json)");
  return [options](Surroundings& surroundings) { return line(*options, surroundings); };
}

}  // namespace winchbook::cli
