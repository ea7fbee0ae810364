#include "answers/drag.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "answers/stock.h"
#include "assess/fitting/recorded.h"
#include "json/json.h"

namespace winchbook::answers {
namespace {

using assess::fitting::DragFinding;
using assess::fitting::Pull;
using assess::fitting::Span;
using assess::fitting::Turns;
using json::Json;

constexpr double kPoundForce = 4.4482216152605;  // N
constexpr double kKilopond = 9.80665;            // N

std::string materials(const knowledge::DragKnowledge& knowledge) {
  std::string names;
  for (const knowledge::Friction& row : knowledge.friction) {
    if (!names.empty()) names += ", ";
    names += row.material;
  }
  return names;
}

/// From the driest low to the greasiest: what may be, when nobody said.
std::optional<Span> friction_of(const knowledge::Friction& row, std::optional<bool> greased) {
  std::optional<Span> span;
  const auto take = [&](const std::optional<double>& low, const std::optional<double>& high) {
    if (!low || !high) return;
    span = span ? Span{std::min(span->low, *low), std::max(span->high, *high)} : Span{*low, *high};
  };
  if (!greased || *greased) take(row.greased_low, row.greased_high);
  if (!greased || !*greased) take(row.dry_low, row.dry_high);
  return span;
}

base::Diagnostics take_friction(DragAnswer& answer) {
  DragRequest& request = answer.request;
  if (request.friction_given) {
    answer.friction_source = "as given";
    return {};
  }
  if (request.material.empty()) {
    return {base::of_command(
        base::error("the friction is missing",
                    "give --friction 0.2 or --friction 0.15..0.25, or --material leather",
                    "command-friction"))};
  }
  const knowledge::Friction* row = find_friction(*answer.knowledge, request.material);
  const auto friction = row == nullptr ? std::nullopt : friction_of(*row, request.greased);
  if (!friction) {
    return {base::of_command(base::error(
        row == nullptr
            ? fmt::format("there is no material \"{}\" in the friction table", request.material)
            : fmt::format("the table has no such friction of \"{}\"", row->material),
        fmt::format("it knows {}; or give --friction", materials(*answer.knowledge)),
        "command-friction"))};
  }
  request.drag.friction = *friction;
  answer.friction_source = fmt::format("{}, {}: {}", row->material,
                                       !request.greased   ? "dry or greased"
                                       : *request.greased ? "greased"
                                                          : "dry",
                                       row->source);
  if (row->sort == knowledge::WasherSort::hazard) {
    answer.warnings.emplace_back(
        "an asbestos-type material: not cut, sanded, brushed or blown on; only a laboratory can "
        "say; "
        "local rules come first");
  }
  return {};
}

void warn(DragAnswer& answer) {
  const DragFinding& finding = answer.finding;
  if (!answer.request.greased) {
    answer.warnings.emplace_back(
        "nobody said whether it is dry or greased: the range covers both where the table does");
  }
  if (finding.pulls.empty() || !answer.request.drag.line) return;
  const double line = *answer.request.drag.line;
  if (std::max(finding.pulls.back().wear.high, finding.pulls.back().pressure.high) >= line) {
    answer.warnings.emplace_back(
        "with the spool nearly empty the drag may reach the line's strength: slacken it as line "
        "runs out");
  }
  const Pull& full = finding.pulls.front();
  if (full.wear.low > finding.setting->high) {
    answer.warnings.emplace_back(
        "with the spool full it holds more than a third of the line's strength: slacken it");
  }
}

std::string pull(double newtons) {
  return fmt::format("{:.3g} N ({:.3g} kgf, {:.3g} lbf)", newtons, newtons / kKilopond,
                     newtons / kPoundForce);
}

std::string span(const Span& of, std::string_view unit) {
  if (of.high - of.low < 1e-12) return fmt::format("{:.4g} {}", of.low, unit);
  return fmt::format("{:.4g} to {:.4g} {}", of.low, of.high, unit);
}

const char* name_of(assess::fitting::Lacking lacking) {
  using assess::fitting::Lacking;
  switch (lacking) {
    case Lacking::stack:
      return "the washers in their order";
    case Lacking::sizes:
      return "inside and outside of the washers that rub";
    case Lacking::friction:
      return "a material that the friction table knows";
    case Lacking::setting:
      return "the pull at the line with the spool full";
    case Lacking::gear_ratio:
      return "the gear's ratio";
    case Lacking::spool:
      return "what is wound on, full and empty";
  }
  return "";
}

double rounded(double value) {
  constexpr double kSteps = 1e6;
  return std::round(value * kSteps) / kSteps + 0.0;
}

Json range(const Span& of) {
  return json::range(rounded(of.low), rounded(of.high));
}

void say_settings(const DragAnswer& answer, std::string& text) {
  text += fmt::format(
      "\nA line of {}: the trade sets a drag to a quarter to a third of it, {} to {},\n"
      "at the line, with the spool full. It is a range, not a rule:\n",
      pull(*answer.request.drag.line), pull(answer.finding.setting->low),
      pull(answer.finding.setting->high));
  for (const knowledge::SettingShare& share : answer.knowledge->settings) {
    text += share.low == share.high
                ? fmt::format("  {}: {} in a hundred\n", share.when, share.low)
                : fmt::format("  {}: {} to {} in a hundred\n", share.when, share.low, share.high);
  }
  text +=
      "A knot takes part of the strength away. Try it on a spring balance, and mark the star.\n";
}

}  // namespace

base::Result<DragAnswer> reckon_drag(library::Library& library, DragRequest request) {
  const auto knowledge = library.drag();
  if (!knowledge) return knowledge.faults();
  DragAnswer answer{std::move(request), *knowledge, {}, {}, {}};
  if (!answer.request.stack.empty()) {
    const auto stack = read_stack(library, answer.request.stack);
    if (!stack) return stack.faults();
    std::vector<Turns> turns;
    for (const auto& washer : *stack)
      turns.push_back(washer.turns);
    answer.request.drag.faces = assess::fitting::rubbing_faces(turns);
  }
  if (auto faults = take_friction(answer); !faults.empty()) return faults;
  if (const std::string fault = fault_of(answer.request.drag); !fault.empty()) {
    return base::of_command(
        base::error(fault, "look at the figures given: winchbook drag --help", "command-figure"));
  }
  answer.finding = assess::fitting::reckon_drag(answer.request.drag);
  warn(answer);
  return answer;
}

base::Result<DragAnswer> reckon_recorded_drag(library::Library& library,
                                              const std::filesystem::path& record) {
  const auto loaded = library.record(record);
  if (!loaded) return loaded.faults();
  const auto knowledge = library.drag();
  if (!knowledge) return knowledge.faults();
  const record::Visit* visit = record::last_visit(loaded->record);
  if (visit == nullptr) {
    return base::error_at({loaded->file, 0, 0}, "the record has no visit, so no drag",
                          "enter the visit in which the reel came to the bench", "no-visit");
  }
  const auto drag = assess::fitting::recorded_drag(loaded->record, *visit, **knowledge);
  if (!drag.lacking.empty()) {
    std::string missing;
    for (const assess::fitting::Lacking one : drag.lacking)
      missing += (missing.empty() ? "" : ", ") + std::string(name_of(one));
    return base::error_at(loaded->where(visit->id.text),
                          "the drag of this record cannot be reckoned; missing: " + missing,
                          "write them down with winchbook measure, or in the visit's <drag>",
                          "drag-measures");
  }
  DragAnswer answer{{}, *knowledge, drag.friction_source, drag.finding, {}};
  DragRequest& request = answer.request;
  request.drag = {drag.rubbing.front().ring,
                  drag.faces,
                  drag.friction,
                  drag.force,
                  {},
                  drag.ratio,
                  drag.spool,
                  visit->drag->line_strength
                      ? std::optional(visit->drag->line_strength->value.approximate())
                      : std::nullopt};
  request.greased = drag.greased;
  for (const assess::fitting::RubbingFace& face : drag.rubbing) {
    request.assumed.push_back(fmt::format("a face of {} rubs from {:.4g} to {:.4g} mm",
                                          face.material, face.ring.inner, face.ring.outer));
  }
  request.assumed.push_back(fmt::format(
      "pressed so that new washers in the middle of their friction slip at the setting of {:.4g} N",
      *drag.setting));
  warn(answer);
  return answer;
}

std::string drag_in_words(const DragAnswer& answer) {
  const auto& drag = answer.request.drag;
  const DragFinding& finding = answer.finding;
  std::string text =
      fmt::format("Drag: ring {:.4g} / {:.4g} mm, {} rubbing {}, friction {} ({}).\n",
                  drag.ring.outer, drag.ring.inner, drag.faces, drag.faces == 1 ? "face" : "faces",
                  drag.friction.high > drag.friction.low
                      ? fmt::format("{:.3g} to {:.3g}", drag.friction.low, drag.friction.high)
                      : fmt::format("{:.3g}", drag.friction.low),
                  answer.friction_source);
  for (const std::string& assumed : answer.request.assumed)
    text += assumed + ".\n";
  text += fmt::format(
      "\nWorn in  (uniform wear)      pressed by {}, slips at {}\n"
      "New      (uniform pressure)  pressed by {}, slips at {}\n"
      "T = μ F N (ro + ri) / 2 worn in; T = ⅔ μ F N (ro³ − ri³) / (ro² − ri²) new.\n",
      span(finding.force_wear, "N"), span(finding.torque_wear, "N·m"),
      span(finding.force_pressure, "N"), span(finding.torque_pressure, "N·m"));
  if (!finding.pulls.empty()) {
    text += fmt::format("\nAt the line, through {:.4g} : 1, F = T / (i r):\n", drag.ratio);
    for (const Pull& one : finding.pulls) {
      text +=
          fmt::format("  {:>3} in a hundred of the line on, {:.4g} mm across: {} worn in, {} new\n",
                      one.fill, one.diameter, span(one.wear, "N"), span(one.pressure, "N"));
    }
    text += "The drag rises as the spool empties.\n";
  }
  if (finding.setting) say_settings(answer, text);
  for (const std::string& warning : answer.warnings)
    text += "\nwarning: " + warning + "\n";
  return text;
}

std::string drag_as_json(const DragAnswer& answer) {
  const auto& drag = answer.request.drag;
  const DragFinding& finding = answer.finding;
  Json pulls = Json::array();
  for (const Pull& one : finding.pulls) {
    pulls.push_back({{"fill", one.fill},
                     {"diameter", rounded(one.diameter)},
                     {"wear", range(one.wear)},
                     {"pressure", range(one.pressure)}});
  }
  const Json all{
      {"faces", drag.faces},
      {"friction", range(drag.friction)},
      {"friction_source", answer.friction_source},
      {"greased", json::or_null(answer.request.greased)},
      {"force", {{"wear", range(finding.force_wear)}, {"pressure", range(finding.force_pressure)}}},
      {"torque",
       {{"wear", range(finding.torque_wear)}, {"pressure", range(finding.torque_pressure)}}},
      {"pulls", std::move(pulls)},
      {"setting", json::or_null(finding.setting, range)},
      {"assumed", answer.request.assumed},
      {"warnings", answer.warnings}};
  return json::answer("drag", all);
}

}  // namespace winchbook::answers
