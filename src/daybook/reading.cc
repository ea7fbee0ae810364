#include "daybook/reading.h"

#include <fmt/format.h>

#include <optional>
#include <utility>

#include "base/decimal.h"
#include "base/measure.h"

namespace winchbook::daybook {
namespace {

bool is_number(const std::string& text) {
  return static_cast<bool>(base::Decimal::parse(text));
}

/// "22" of 22.000, "4.45" of 4.4482: as finely as a bench measures.
std::string rounded(double value) {
  std::string text = fmt::format("{:.2f}", value);
  while (text.ends_with('0'))
    text.pop_back();
  if (text.ends_with('.')) text.pop_back();
  return text;
}

/// A figure in newtons or millimetres when its unit can be reckoned into one.
std::optional<Reading> reckoned(const std::string& figure, const std::string& unit) {
  using base::Dimension;
  const std::string text = figure + " " + unit;
  for (const auto& [dimension, inside] :
       {std::pair{Dimension::force, "N"}, std::pair{Dimension::length, "mm"}}) {
    const auto measure = base::parse_measure(text, dimension);
    if (!measure) continue;
    const bool as_it_is = unit == inside;
    return Reading{as_it_is ? figure : rounded(measure->value), {}, inside, {}};
  }
  return std::nullopt;
}

Reading read_one(const std::string& figure, const std::string& unit) {
  if (auto known = reckoned(figure, unit)) return *known;
  return {figure, {}, unit, {}};
}

}  // namespace

Reading read_reading(std::string text, const std::string& unit) {
  const std::size_t last = text.find_last_of("0123456789");
  if (last == std::string::npos) return {{}, {}, {}, text};
  const std::size_t behind = text.find_first_not_of(' ', last + 1);
  const std::string own = behind == std::string::npos ? unit : text.substr(behind);
  const std::string figures = text.substr(0, last + 1);
  const std::size_t to = figures.find(" to ");
  const std::string low = figures.substr(0, to);
  if (!is_number(low)) return {{}, {}, {}, std::move(text)};
  Reading reading = read_one(low, own);
  if (to != std::string::npos) {
    const std::string high = figures.substr(to + 4);
    if (!is_number(high)) return {{}, {}, {}, std::move(text)};
    reading.high = read_one(high, own).low;
  }
  return reading;
}

}  // namespace winchbook::daybook
