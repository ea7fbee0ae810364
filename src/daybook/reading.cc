#include "daybook/reading.h"

#include <fmt/format.h>

#include <utility>

#include "base/measure.h"
#include "base/words_of_text.h"

namespace winchbook::daybook {
namespace {

std::optional<base::Decimal> number(std::string_view text) {
  const auto read = base::Decimal::parse(text);
  return read ? std::optional(*read) : std::nullopt;
}

/// 22 of 22.000, 4.45 of 4.4482: as finely as a bench measures.
base::Decimal rounded(double value) {
  std::string text = fmt::format("{:.2f}", value);
  while (text.ends_with('0'))
    text.pop_back();
  if (text.ends_with('.')) text.pop_back();
  return base::Decimal::parse(text).value();
}

/// Puts a figure into newtons or millimetres when its unit can be reckoned into one; its unit then.
std::string reckon(base::Decimal& figure, const std::string& unit) {
  using base::Dimension;
  for (const auto& [dimension, inside] :
       {std::pair{Dimension::force, "N"}, std::pair{Dimension::length, "mm"}}) {
    const auto measure = base::parse_measure(figure.text() + " " + unit, dimension);
    if (!measure) continue;
    if (unit != inside) figure = rounded(measure->value);
    return inside;
  }
  return unit;
}

}  // namespace

base::Diagnostics read_typed(std::string_view typed, Reading& into) {
  into = {std::string(typed), {}, {}, {}};
  const std::size_t last = typed.find_last_of("0123456789");
  if (last == std::string_view::npos) return {};
  constexpr std::string_view kTo = " to ";
  const std::string_view figures = typed.substr(0, last + 1);
  const std::size_t to = figures.find(kTo);
  const auto low = number(figures.substr(0, to));
  const bool one = to == std::string_view::npos;
  const auto high = one ? std::nullopt : number(figures.substr(to + kTo.size()));
  if (!low || (!one && !high)) return {};
  into.low = low;
  into.high = high;
  into.unit = base::trimmed(typed.substr(last + 1));
  return {};
}

Reading reckoned(Reading reading, const std::string& unit) {
  if (!reading.low) return reading;
  const std::string named = reading.unit.empty() ? unit : reading.unit;
  reading.unit = reckon(*reading.low, named);
  if (reading.high) reckon(*reading.high, named);
  return reading;
}

base::Diagnostics read_typed(std::string_view typed, Force& into) {
  Forces forces;
  base::Diagnostics faults = read_typed(typed, forces);
  if (faults.empty() && forces.high) {
    faults = {base::error("\"" + std::string(typed) + "\" is more than one force",
                          "write it as \"20 N\" or \"2 kg\"")};
  }
  if (faults.empty()) into.newtons = forces.low;
  return faults;
}

base::Diagnostics read_typed(std::string_view typed, Forces& into) {
  Reading reading;
  static_cast<void>(read_typed(typed, reading));
  reading = reckoned(std::move(reading), "N");
  if (!reading.low || reading.unit != "N") {
    return {base::error("\"" + std::string(typed) + "\" is no force",
                        "write it as \"20 N\" or \"2 kg\"")};
  }
  into.low = {*reading.low};
  into.high.reset();
  if (reading.high) into.high = base::Newtons{*reading.high};
  return {};
}

}  // namespace winchbook::daybook
