#include "answers/drag.h"
#include "answers/figures.h"

namespace winchbook::answers {
namespace {

using base::Diagnostics;
using base::Dimension;

/// What is typed of a drag.
struct DragTyped {
  std::filesystem::path record;  ///< its own drag, and nothing else that is typed
  TypedLength outer;
  std::optional<forms::MeasuredFromZero<Dimension::length>> inner;
  std::optional<int> faces;
  std::string stack;
  std::optional<NumberRange> friction;
  std::string material;
  bool greased = false;
  bool dry = false;
  std::optional<forms::Measured<Dimension::force>> force;
  std::optional<forms::Measured<Dimension::pressure>> pressure;
  std::optional<Gearing> gear;
  TypedLength spool_full;
  TypedLength spool_empty;
  std::optional<forms::Measured<Dimension::force>> line;
  bool json = false;
};

forms::Form form(DragTyped& typed) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      field("--record", "a reel's folder or record: its own drag, from the setting measured",
            typed.record),
      field("--outer", "outside of the rubbing ring: \"22 mm\", \"7/8 in\"", typed.outer),
      field("--inner", "its hole; left out, none", typed.inner),
      field("--faces", "how many faces rub (faces, not washers)", typed.faces),
      field("--stack",
            "the washers from the gear's floor outwards, or a CSV file of them: the faces follow "
            "from it",
            typed.stack),
      field("--friction", "0.2, or from low to high: 0.15..0.25", typed.friction),
      field("--material",
            "of the friction washers: its friction is taken from shared/drag/drag.xml",
            typed.material),
      flag("--greased", "the washers are greased", typed.greased),
      flag("--dry", "the washers are dry", typed.dry),
      field("--force", "what presses them: \"100 N\", \"20 lbf\"", typed.force),
      field("--pressure", "or the pressure on them: \"0.1 MPa\"", typed.pressure),
      field("--gear", "turns of the spool for one of what slips: \"3:1\"; left out, 1:1",
            typed.gear),
      field("--spool-full", "across the wound line, spool full", typed.spool_full),
      field("--spool-empty", "across the spool's core, or its last line", typed.spool_empty),
      field("--line", "strength of the line: \"20 lb\", \"9 kg\", \"90 N\"", typed.line),
      flag("--json", "the answer as JSON (schemas/drag.schema.json)", typed.json),
  };
}

base::Diagnostic wrong_options(std::string message, std::string hint) {
  return base::of_command(base::error(std::move(message), std::move(hint), "command-options"));
}

Diagnostics contradictions(const DragTyped& typed) {
  Diagnostics faults;
  const auto one_of = [&](bool first, bool second, const char* what) {
    if (first != second) return;
    faults.push_back(wrong_options(
        std::string(first ? "both are given: " : "one is missing: ") + what, "give one of them"));
  };
  one_of(typed.faces.has_value(), !typed.stack.empty(), "--faces, --stack");
  one_of(typed.force.has_value(), typed.pressure.has_value(), "--force, --pressure");
  if (typed.spool_full.has_value() != typed.spool_empty.has_value()) {
    faults.push_back(wrong_options("one is missing: --spool-full, --spool-empty",
                                   "give the wound line's diameter at both"));
  }
  if (typed.greased && typed.dry) {
    faults.push_back(
        wrong_options("both are given: --greased, --dry", "give one of them, or none"));
  }
  return faults;
}

/// A record has its own drag.
Diagnostics beside_record(const DragTyped& typed) {
  const bool alone = !typed.outer && !typed.inner && !typed.faces && typed.stack.empty() &&
                     !typed.friction && typed.material.empty() && !typed.greased && !typed.dry &&
                     !typed.force && !typed.pressure && !typed.gear && !typed.spool_full &&
                     !typed.spool_empty && !typed.line;
  if (alone) return {};
  return {wrong_options("--record takes no figures beside it",
                        "the record has its own: give either the record or figures")};
}

DragRequest request_of(const DragTyped& typed) {
  DragRequest request;
  auto& assumed = request.assumed;
  auto& drag = request.drag;
  drag.ring.outer = typed.outer->measure.value;
  drag.ring.inner = figure_of("--inner", typed.inner, assumed).value_or(0);
  drag.faces = typed.faces.value_or(0);
  if (typed.friction) {
    drag.friction = {typed.friction->low, typed.friction->high};
    request.friction_given = true;
  }
  drag.force = figure_of("--force", typed.force, assumed).value_or(0);
  drag.pressure = figure_of("--pressure", typed.pressure, assumed);
  drag.ratio = typed.gear.value_or(Gearing{}).ratio;
  const auto full = figure_of("--spool-full", typed.spool_full, assumed);
  const auto empty = figure_of("--spool-empty", typed.spool_empty, assumed);
  if (full && empty) drag.spool = assess::fitting::SpoolFill{*full, *empty};
  drag.line = figure_of("--line", typed.line, assumed);
  request.stack = typed.stack;
  request.material = typed.material;
  if (typed.greased || typed.dry) request.greased = typed.greased;
  return request;
}

base::Result<DragAnswer> answer_to(const DragTyped& typed, library::Library& library) {
  if (!typed.record.empty()) {
    if (auto faults = beside_record(typed); !faults.empty()) return faults;
    return reckon_recorded_drag(library, typed.record);
  }
  if (auto faults = contradictions(typed); !faults.empty()) return faults;
  if (auto faults = missing_among({{"--outer", typed.outer}}); !faults.empty()) return faults;
  return reckon_drag(library, request_of(typed));
}

base::Result<forms::Outcome> run(const DragTyped& typed, forms::Setting& setting) {
  const auto answer = answer_to(typed, setting.library);
  if (!answer) return answer.faults();
  return forms::Outcome{typed.json ? drag_as_json(*answer) : drag_in_words(*answer), {}, {}};
}

}  // namespace

forms::Job drag_job() {
  return forms::job_of(form, run);
}

}  // namespace winchbook::answers
