#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "base/measure.h"
#include "forms/read_typed.h"

/// Figures as they are typed for what is reckoned without a record.
namespace winchbook::answers {

using TypedLength = std::optional<forms::Measured<base::Dimension::length>>;

/// Turns of the spool for one of the handle, or teeth of gear and pinion: "3 : 1", "48:12", "4".
struct Gearing {
  double ratio = 1;
};
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, Gearing& into);

/// One number, or from low to high: "0.2", "0.15..0.25".
struct NumberRange {
  double low = 0;
  double high = 0;
};
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, NumberRange& into);

/// The figure that was typed for an option, in its dimension's unit. What was taken for what is
/// added to `assumed`, one sentence with the option's name.
template <class Typed>
std::optional<double> figure_of(std::string_view option, const std::optional<Typed>& typed,
                                std::vector<std::string>& assumed) {
  if (!typed) return std::nullopt;
  const base::Measure& measure = typed->measure;
  if (!measure.assumed.empty()) assumed.push_back(std::string(option) + ": " + measure.assumed);
  return measure.value;
}

/// A fault for each length that cannot be left out and was.
struct NeededLength {
  std::string_view option;
  const TypedLength& typed;
};
[[nodiscard]] base::Diagnostics missing_among(const std::vector<NeededLength>& needed);

}  // namespace winchbook::answers
