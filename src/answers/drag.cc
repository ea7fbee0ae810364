#include "answers/drag.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

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

base::Diagnostics take_friction(DragAnswer& answer, const words::Catalogue& words) {
  DragRequest& request = answer.request;
  if (request.friction_given) {
    answer.friction_source = words.say("answer.drag.as-given");
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
  const char* state = !request.greased   ? "answer.drag.dry-or-greased"
                      : *request.greased ? "answer.drag.greased"
                                         : "answer.drag.dry";
  answer.friction_source = words.say(
      "answer.drag.friction-source",
      {{"material", row->material}, {"state", words.say(state)}, {"source", row->source}});
  if (row->sort == knowledge::WasherSort::hazard)
    answer.warnings.push_back(words.say("answer.drag.hazard"));
  return {};
}

void warn(DragAnswer& answer, const words::Catalogue& words) {
  const DragFinding& finding = answer.finding;
  const auto say = [&](const char* key) { answer.warnings.push_back(words.say(key)); };
  if (!answer.request.greased) say("answer.drag.not-said");
  if (finding.pulls.empty() || !answer.request.drag.line) return;
  const double line = *answer.request.drag.line;
  if (std::max(finding.pulls.back().wear.high, finding.pulls.back().pressure.high) >= line)
    say("answer.drag.empty-too-strong");
  const Pull& full = finding.pulls.front();
  if (full.wear.low > finding.setting->high) say("answer.drag.full-too-strong");
}

std::string pull(double newtons) {
  return fmt::format("{:.3g} N ({:.3g} kgf, {:.3g} lbf)", newtons, newtons / kKilopond,
                     newtons / kPoundForce);
}

std::string span(const Span& of, std::string_view unit, const words::Catalogue& words) {
  if (of.high - of.low < 1e-12) return fmt::format("{:.4g} {}", of.low, unit);
  return words.say("range", {{"low", fmt::format("{:.4g}", of.low)},
                             {"high", fmt::format("{:.4g} {}", of.high, unit)}});
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

void tell_settings(const DragAnswer& answer, const words::Catalogue& words, Blocks& blocks) {
  blocks.emplace_back(
      paragraph(words.say("answer.drag.setting", {{"line", pull(*answer.request.drag.line)},
                                                  {"low", pull(answer.finding.setting->low)},
                                                  {"high", pull(answer.finding.setting->high)}})));
  std::vector<std::string> items;
  for (const knowledge::SettingShare& share : answer.knowledge->settings) {
    const std::string shares = share.low == share.high
                                   ? fmt::format("{}", share.low)
                                   : words.say("range", {{"low", share.low}, {"high", share.high}});
    items.push_back(words.say("answer.drag.share", {{"when", share.when}, {"shares", shares}}));
  }
  blocks.emplace_back(list_of(items));
  blocks.emplace_back(next_line(words.say("answer.drag.try-it")));
}

document::Table slips(const DragFinding& finding, const words::Catalogue& words) {
  document::Table table;
  table.columns = {{document::Column::Align::words, 0, true}, {}, {}};
  const auto row = [&](const char* state, const char* model, const Span& force,
                       const Span& torque) {
    table.rows.push_back(
        row_of({words.say(state), words.say(model),
                words.say("answer.drag.slips", {{"force", span(force, "N", words)},
                                                {"torque", span(torque, "N·m", words)}})}));
  };
  row("answer.drag.worn-in", "answer.drag.wear", finding.force_wear, finding.torque_wear);
  row("answer.drag.new", "answer.drag.pressure", finding.force_pressure, finding.torque_pressure);
  table.below = document::plain(words.say("answer.drag.formulas"));
  return table;
}

}  // namespace

base::Result<DragAnswer> reckon_drag(library::Library& library, DragRequest request) {
  const auto knowledge = library.drag();
  if (!knowledge) return knowledge.faults();
  const auto words = library.words(kNoRecord);
  if (!words) return words.faults();
  DragAnswer answer{std::move(request), *knowledge, {}, {}, {}, words->language()};
  if (!answer.request.stack.empty()) {
    const auto stack = knowledge::read_stack(library.source(), answer.request.stack);
    if (!stack) return stack.faults();
    std::vector<Turns> turns;
    for (const auto& washer : *stack)
      turns.push_back(washer.turns);
    answer.request.drag.faces = assess::fitting::rubbing_faces(turns);
  }
  if (auto faults = take_friction(answer, *words); !faults.empty()) return faults;
  if (const std::string fault = fault_of(answer.request.drag); !fault.empty()) {
    return base::of_command(
        base::error(fault, "look at the figures given: winchbook drag --help", "command-figure"));
  }
  answer.finding = assess::fitting::reckon_drag(answer.request.drag);
  warn(answer, *words);
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
                          "the drag of this record cannot be worked out; missing: " + missing,
                          "write them down with winchbook measure, or in the visit's <drag>",
                          "drag-measures");
  }
  const auto words = library.words(loaded->record.language);
  if (!words) return words.faults();
  DragAnswer answer{{}, *knowledge, drag.friction_source, drag.finding, {}, words->language()};
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
    request.assumed.push_back(
        words->say("answer.drag.face", {{"material", face.material},
                                        {"inner", fmt::format("{:.4g}", face.ring.inner)},
                                        {"outer", fmt::format("{:.4g}", face.ring.outer)}}));
  }
  request.assumed.push_back(
      words->say("answer.drag.pressed", {{"force", fmt::format("{:.4g} N", *drag.setting)}}));
  warn(answer, *words);
  return answer;
}

Blocks drag_told(const DragAnswer& answer, const words::Catalogue& words) {
  const auto& drag = answer.request.drag;
  const DragFinding& finding = answer.finding;
  const auto figure = [](double of) { return fmt::format("{:.3g}", of); };
  const bool ranges = drag.friction.high > drag.friction.low;
  std::string text =
      words.say("answer.drag.drag",
                {{"outer", fmt::format("{:.4g}", drag.ring.outer)},
                 {"inner", fmt::format("{:.4g}", drag.ring.inner)},
                 {"faces", drag.faces},
                 {"friction", ranges ? words.say("range", {{"low", figure(drag.friction.low)},
                                                           {"high", figure(drag.friction.high)}})
                                     : figure(drag.friction.low)},
                 {"source", answer.friction_source}});
  for (const std::string& assumed : answer.request.assumed)
    text += "\n" + assumed + ".";
  Blocks blocks{paragraph(text), slips(finding, words)};
  if (!finding.pulls.empty()) {
    std::vector<std::string> items;
    for (const Pull& one : finding.pulls) {
      items.push_back(
          words.say("answer.drag.pull", {{"fill", one.fill},
                                         {"diameter", fmt::format("{:.4g}", one.diameter)},
                                         {"wear", span(one.wear, "N", words)},
                                         {"pressure", span(one.pressure, "N", words)}}));
    }
    blocks.emplace_back(paragraph(
        words.say("answer.drag.at-line", {{"ratio", fmt::format("{:.4g}", drag.ratio)}})));
    blocks.emplace_back(list_of(items));
    blocks.emplace_back(next_line(words.say("answer.drag.rises")));
  }
  if (finding.setting) tell_settings(answer, words, blocks);
  for (const std::string& warning : answer.warnings)
    blocks.emplace_back(paragraph(words.say("answer.drag.warning", {{"what", warning}})));
  return blocks;
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
