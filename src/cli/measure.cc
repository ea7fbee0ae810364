#include "daybook/entries/measure.h"

#include <fmt/format.h>

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <memory>
#include <string>
#include <utility>

#include "base/decimal.h"
#include "cli/measures.h"
#include "cli/writing.h"

namespace winchbook::cli {
namespace {

struct Options {
  WritingOptions writing;
  daybook::MeasureRequest request;
  std::string length;
  std::string weight;
  std::string capacity;
  std::string line;
  std::string gear_ratio;
  std::string setting;
  std::string spool_full;
  std::string spool_empty;
  std::string line_strength;
};

/// As it was typed when it is in the record's own unit, so that 74.0 stays 74.0; else reckoned.
std::string in_unit(const std::string& typed, double value, std::string_view unit) {
  const std::size_t end = typed.find_first_not_of("0123456789.");
  std::string figure = typed.substr(0, end);
  const std::size_t behind = typed.find_first_not_of(' ', end);
  if (behind != std::string::npos && typed.substr(behind) == unit && base::Decimal::parse(figure)) {
    return figure;
  }
  std::string text = fmt::format("{:.3f}", value);
  while (text.ends_with('0'))
    text.pop_back();
  if (text.ends_with('.')) text.pop_back();
  return text;
}

Exit tell_measure(Options options, Surroundings& surroundings) {
  using base::Dimension;
  Measures measures;
  daybook::MeasureRequest& request = options.request;
  if (!request.what.empty()) {
    const double value = measures.needed("LENGTH", options.length, Dimension::length);
    request.length = in_unit(options.length, value, "mm");
  }
  if (const auto weight = measures.given("--weight", options.weight, Dimension::mass)) {
    request.weight = in_unit(options.weight, weight->value, "g");
  }
  if (const auto length = measures.given("--capacity", options.capacity, Dimension::length)) {
    request.capacity = in_unit(options.capacity, length->value / 1000.0, "m");
    const double line = measures.needed("--of-line", options.line, Dimension::length);
    request.line = in_unit(options.line, line, "mm");
  }
  if (!options.gear_ratio.empty()) {
    request.gear_ratio = fmt::format("{:.3f}", measures.ratio("--gear-ratio", options.gear_ratio));
  }
  const auto of_drag = [&](std::string_view option, const std::string& typed, Dimension dimension,
                           std::string_view unit, std::string& into) {
    if (const auto given = measures.given(option, typed, dimension)) {
      into = in_unit(typed, given->value, unit);
    }
  };
  of_drag("--setting", options.setting, Dimension::force, "N", request.setting);
  of_drag("--spool-full", options.spool_full, Dimension::length, "mm", request.spool_full);
  of_drag("--spool-empty", options.spool_empty, Dimension::length, "mm", request.spool_empty);
  of_drag("--line-strength", options.line_strength, Dimension::force, "N", request.line_strength);
  const auto day = day_of(options.writing, surroundings);
  if (!day) return tell(day.faults(), surroundings.err);
  request.on = *day;
  if (!measures.faults().empty()) return wrong_command(measures.faults(), surroundings.err);
  return write(options.writing, daybook::measure(std::move(request)), surroundings);
}

}  // namespace

Action add_measure(CLI::App& app) {
  auto options = std::make_shared<Options>();
  add_writing_options(app, options->writing);
  app.add_option("WHAT", options->request.what, "what is measured: \"plate diameter\"");
  app.add_option("LENGTH", options->length, "how long: \"98.4 mm\", \"3 7/8 in\"");
  app.add_option("--weight", options->weight, "of the reel without line, or of --part: \"612 g\"");
  app.add_option("--part", options->request.part, "the part that is weighed");
  app.add_option("--gear-ratio", options->gear_ratio,
                 "turns of the spool for one of the handle: 3.5:1, or teeth 60:14");
  app.add_option("--capacity", options->capacity, "how much line goes on: \"210 m\"");
  app.add_option("--of-line", options->line, "how thick that line is: \"0.60 mm\"");
  app.add_option("--source", options->request.source, "how the capacity is known");
  app.add_option(
      "--washer", options->request.washers,
      "a washer of the drag, from the gear outwards, with its hole, outside and thickness "
      "in mm: \"metal-eared: to-gear 7.4 23.6 0.9\"; to-gear, to-sleeve or free");
  app.add_flag("--greased", options->request.greased, "the drag is greased; left out, dry");
  app.add_option("--setting", options->setting, "what the drag is set to at the line: \"12 N\"");
  app.add_option("--spool-full", options->spool_full, "across the wound line, the spool full");
  app.add_option("--spool-empty", options->spool_empty, "across the core, or the last line on it");
  app.add_option("--line-strength", options->line_strength, "of the line the drag is set for");
  return [options](Surroundings& surroundings) { return tell_measure(*options, surroundings); };
}

}  // namespace winchbook::cli
