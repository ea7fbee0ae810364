#include "answers/line.h"

#include <fmt/format.h>

#include <cmath>
#include <nlohmann/json.hpp>
#include <utility>

namespace winchbook::answers {
namespace {

using Json = nlohmann::ordered_json;

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

std::string line_in_words(const LineAnswer& answer) {
  const LineRequest& request = answer.request;
  std::string text;
  if (answer.capacity) {
    text += fmt::format(
        "The spool holds {} of {:.3g} mm where it holds {} of {:.3g} mm: L2 = L1 (d1 / d2)².\n"
        "Flat or loosely wound line takes more room; leave 2 or 3 mm of the rim free.\n",
        length(*answer.capacity), *request.diameter, length(request.known->length),
        request.known->diameter);
  }
  if (answer.backing) {
    text += fmt::format("Under {} of it: {} of backing of {:.3g} mm.\n", length(*request.length),
                        length(*answer.backing), *request.backing);
  }
  if (answer.too_much) {
    text += fmt::format("{} of it is more than the spool holds: no backing.\n",
                        length(*request.length));
  }
  if (answer.retrieve_full) {
    text += fmt::format("One turn of the handle winds {} with the spool full: π D i.\n",
                        turn(*answer.retrieve_full));
  }
  if (answer.retrieve_empty) {
    text += fmt::format("With the spool empty: {}.\n", turn(*answer.retrieve_empty));
  }
  return text;
}

std::string line_as_json(const LineAnswer& answer) {
  const Json json{{"capacity", number(answer.capacity)},
                  {"backing", number(answer.backing)},
                  {"too_much", answer.too_much},
                  {"retrieve_full", number(answer.retrieve_full)},
                  {"retrieve_empty", number(answer.retrieve_empty)}};
  return json.dump(2) + "\n";
}

}  // namespace winchbook::answers
