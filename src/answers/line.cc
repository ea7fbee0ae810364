#include "answers/line.h"

#include <fmt/format.h>

#include <cmath>
#include <utility>

#include "answers/figures.h"
#include "json/json.h"

namespace winchbook::answers {
namespace {

using json::Json;

constexpr double kYard = 0.9144;  // m, exact
constexpr double kInch = 25.4;    // mm, exact

std::string length(double metres) {
  return fmt::format("{:.0f} m ({:.0f} yd)", metres, metres / kYard);
}

std::string turn(double millimetres) {
  return fmt::format("{:.0f} mm ({:.1f} in)", millimetres, millimetres / kInch);
}

Json number(const std::optional<double>& value) {
  constexpr double kSteps = 1e6;
  return value ? Json(std::round(*value * kSteps) / kSteps) : Json(nullptr);
}

/// What is typed of a line.
struct LineTyped {
  TypedLength holds;
  TypedLength of;
  TypedLength diameter;
  TypedLength length;
  TypedLength backing;
  TypedLength spool_full;
  TypedLength spool_empty;
  Gearing gear;
  bool json = false;
};

forms::Form form(LineTyped& typed) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      field("--holds", "a length that fills the spool: \"200 m\", \"300 yd\"", typed.holds),
      field("--of", "the diameter of that line: \"0.30 mm\"", typed.of),
      field("--diameter", "of the line to put on", typed.diameter),
      field("--length", "of the line to put on, with backing under it", typed.length),
      field("--backing", "diameter of the backing", typed.backing),
      field("--spool-full", "across the wound line, spool full", typed.spool_full),
      field("--spool-empty", "the same, spool empty", typed.spool_empty),
      field("--gear", "turns of the spool for one of the handle: \"4:1\"", typed.gear),
      flag("--json", "the answer as JSON (schemas/line.schema.json)", typed.json),
  };
}

LineRequest request_of(const LineTyped& typed) {
  constexpr double kMetre = 1000;  // mm
  const auto length = [](const TypedLength& of) {
    return of ? std::optional(of->measure.value) : std::nullopt;
  };
  LineRequest request;
  if (typed.holds && typed.of) {
    request.known = {typed.holds->measure.value / kMetre, typed.of->measure.value};
  }
  request.diameter = length(typed.diameter);
  if (typed.length) request.length = typed.length->measure.value / kMetre;
  request.backing = length(typed.backing);
  request.wound = length(typed.spool_full);
  request.empty = length(typed.spool_empty);
  request.ratio = typed.gear.ratio;
  return request;
}

base::Result<forms::Outcome> run(const LineTyped& typed, forms::Setting& setting) {
  const LineAnswer answer = reckon_line(request_of(typed));
  if (!answer.capacity && !answer.retrieve_full && !answer.retrieve_empty) {
    return base::of_command(base::error(
        "nothing was asked that can be worked out",
        "for how much goes on: --holds \"200 m\" --of \"0.30 mm\" --diameter \"0.20 mm\"; "
        "for a turn of the handle: --spool-full \"45 mm\" --gear 4:1",
        "command-options"));
  }
  if (typed.json) return forms::Outcome{line_as_json(answer), {}, {}};
  return tell(setting, kNoRecord,
              [&](const words::Catalogue& words) { return line_told(answer, words); });
}

}  // namespace

LineAnswer reckon_line(LineRequest request) {
  LineAnswer answer;
  if (request.known && request.diameter) {
    answer.capacity = assess::fitting::capacity(*request.known, *request.diameter);
    if (request.length && request.backing) {
      answer.backing = assess::fitting::backing(
          *request.known, {*request.length, *request.diameter}, *request.backing);
      answer.too_much = !answer.backing;
    }
  }
  if (request.wound) {
    answer.retrieve_full = assess::fitting::retrieve(*request.wound, request.ratio);
  }
  if (request.empty) {
    answer.retrieve_empty = assess::fitting::retrieve(*request.empty, request.ratio);
  }
  answer.request = std::move(request);
  return answer;
}

Blocks line_told(const LineAnswer& answer, const words::Catalogue& words) {
  const LineRequest& request = answer.request;
  const auto diameter = [](double of) { return fmt::format("{:.3g} mm", of); };
  Blocks blocks;
  const auto say = [&](const char* key, words::Arguments arguments) {
    blocks.emplace_back(next_line(words.say(key, arguments)));
  };
  if (answer.capacity) {
    say("answer.line.capacity", {{"length", length(*answer.capacity)},
                                 {"diameter", diameter(*request.diameter)},
                                 {"known", length(request.known->length)},
                                 {"of", diameter(request.known->diameter)}});
    say("answer.line.loosely", {});
  }
  if (answer.backing) {
    say("answer.line.backing", {{"length", length(*request.length)},
                                {"backing", length(*answer.backing)},
                                {"diameter", diameter(*request.backing)}});
  }
  if (answer.too_much) say("answer.line.too-much", {{"length", length(*request.length)}});
  if (answer.retrieve_full) say("answer.line.full", {{"length", turn(*answer.retrieve_full)}});
  if (answer.retrieve_empty) say("answer.line.empty", {{"length", turn(*answer.retrieve_empty)}});
  return blocks;
}

std::string line_as_json(const LineAnswer& answer) {
  return json::answer("line", {{"capacity", number(answer.capacity)},
                               {"backing", number(answer.backing)},
                               {"too_much", answer.too_much},
                               {"retrieve_full", number(answer.retrieve_full)},
                               {"retrieve_empty", number(answer.retrieve_empty)}});
}

forms::Job line_job() {
  return forms::job_of(form, run);
}

}  // namespace winchbook::answers
