#include "answers/drag.h"

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

struct Options {
  std::string outer;
  std::string inner;
  int faces = 0;
  std::string stack;
  std::string friction;
  std::string material;
  bool greased = false;
  bool dry = false;
  std::string force;
  std::string pressure;
  std::string gear;
  std::string spool_full;
  std::string spool_empty;
  std::string line;
  std::string record;
  bool json = false;
};

base::Diagnostics contradictions(const Options& options) {
  base::Diagnostics faults;
  const auto one_of = [&](bool first, bool second, const char* what) {
    if (first == second) {
      faults.push_back(
          base::error(std::string(first ? "both are given: " : "one is missing: ") + what,
                      "give one of them", "command-options"));
    }
  };
  one_of(options.faces > 0, !options.stack.empty(), "--faces, --stack");
  one_of(!options.force.empty(), !options.pressure.empty(), "--force, --pressure");
  if (options.spool_full.empty() != options.spool_empty.empty()) {
    faults.push_back(base::error("one is missing: --spool-full, --spool-empty",
                                 "give the wound line's diameter at both", "command-options"));
  }
  if (options.greased && options.dry) {
    faults.push_back(base::error("both are given: --greased, --dry", "give one of them, or none",
                                 "command-options"));
  }
  return faults;
}

answers::DragRequest request_of(const Options& options, Measures& measures) {
  answers::DragRequest request;
  auto& drag = request.drag;
  drag.ring.outer = measures.needed("--outer", options.outer, Dimension::length);
  drag.ring.inner = measures.given("--inner", options.inner, Dimension::length, true)
                        .value_or(base::Measure{})
                        .value;
  drag.faces = options.faces;
  if (const auto friction = measures.range("--friction", options.friction)) {
    drag.friction = {friction->first, friction->second};
    request.friction_given = true;
  }
  if (const auto force = measures.given("--force", options.force, Dimension::force)) {
    drag.force = force->value;
  }
  if (const auto pressure = measures.given("--pressure", options.pressure, Dimension::pressure)) {
    drag.pressure = pressure->value;
  }
  drag.ratio = measures.ratio("--gear", options.gear);
  const auto full = measures.given("--spool-full", options.spool_full, Dimension::length);
  const auto empty = measures.given("--spool-empty", options.spool_empty, Dimension::length);
  if (full && empty) drag.spool = assess::fitting::SpoolFill{full->value, empty->value};
  if (const auto line = measures.given("--line", options.line, Dimension::force)) {
    drag.line = line->value;
  }
  request.stack = options.stack;
  request.material = options.material;
  if (options.greased || options.dry) request.greased = options.greased;
  request.assumed = measures.assumed();
  return request;
}

Exit recorded_drag(const Options& options, Surroundings& surroundings) {
  const library::World world{surroundings.files, surroundings.data, surroundings.version};
  const auto answer = answers::reckon_recorded_drag(world, options.record);
  if (!answer) return tell(answer.faults(), surroundings.err);
  surroundings.out << (options.json ? answers::drag_as_json(*answer)
                                    : answers::drag_in_words(*answer));
  return kFine;
}

Exit drag(const Options& options, Surroundings& surroundings) {
  if (!options.record.empty()) return recorded_drag(options, surroundings);
  if (const auto faults = contradictions(options); !faults.empty()) {
    return wrong_command(faults, surroundings.err);
  }
  Measures measures;
  answers::DragRequest request = request_of(options, measures);
  if (!measures.faults().empty()) return wrong_command(measures.faults(), surroundings.err);
  const library::World world{surroundings.files, surroundings.data, surroundings.version};
  const auto answer = answers::reckon_drag(world, std::move(request));
  if (!answer) return tell(answer.faults(), surroundings.err);
  surroundings.out << (options.json ? answers::drag_as_json(*answer)
                                    : answers::drag_in_words(*answer));
  return kFine;
}

}  // namespace

Action add_drag(CLI::App& app) {
  auto options = std::make_shared<Options>();
  auto* record =
      app.add_option("--record", options->record,
                     "a reel's folder or record: its own drag, from the setting measured");
  app.add_option("--outer", options->outer, "outside of the rubbing ring: \"22 mm\", \"7/8 in\"");
  app.add_option("--inner", options->inner, "its hole; left out, none");
  app.add_option("--faces", options->faces, "how many faces rub (faces, not washers)")
      ->check(CLI::Range(0, 200));
  app.add_option("--stack", options->stack,
                 "the washers from the gear's floor outwards, or a CSV file of them: the faces "
                 "follow from it");
  app.add_option("--friction", options->friction, "0.2, or from low to high: 0.15..0.25");
  app.add_option("--material", options->material,
                 "of the friction washers: its friction is taken from shared/drag/drag.xml");
  app.add_flag("--greased", options->greased, "the washers are greased");
  app.add_flag("--dry", options->dry, "the washers are dry");
  app.add_option("--force", options->force, "what presses them: \"100 N\", \"20 lbf\"");
  app.add_option("--pressure", options->pressure, "or the pressure on them: \"0.1 MPa\"");
  app.add_option("--gear", options->gear,
                 "turns of the spool for one of what slips: \"3:1\"; left out, 1:1");
  app.add_option("--spool-full", options->spool_full, "across the wound line, spool full");
  app.add_option("--spool-empty", options->spool_empty,
                 "across the spool's core, or its last line");
  app.add_option("--line", options->line, "strength of the line: \"20 lb\", \"9 kg\", \"90 N\"");
  for (CLI::Option* other : app.get_options()) {
    if (other != record && other->get_name() != "--help") record->excludes(other);
  }
  app.add_flag("--json", options->json, "the answer as JSON (schemas/drag.schema.json)");
  return [options](Surroundings& surroundings) { return drag(*options, surroundings); };
}

}  // namespace winchbook::cli
