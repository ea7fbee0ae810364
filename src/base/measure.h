#pragma once

#include <string>
#include <string_view>

#include "base/result.h"

namespace winchbook::base {

/// What a measured figure is a figure of. Inside the program a length is in millimetres, a force in
/// newtons, a mass in grams, a torque in newton metres, a pressure in newtons per square
/// millimetre (megapascals).
enum class Dimension { length, force, mass, torque, pressure };

/// A figure as somebody read it off calipers or a spring balance.
struct Measure {
  double value = 0;          ///< in the dimension's unit
  double tolerance = 0;      ///< ±, in the same unit; 0 when none was given
  std::string assumed = {};  ///< "20 lb is taken as a pull: 20 lbf"; empty when nothing was
};

/// Reads a figure with its unit as people type them: "22 mm", "7/8\"", "1 7/8 in", "0.875 in",
/// "20 lb", "9 kg", "1.2 N·m", "10 lbf·in", "22 ± 0.05 mm". Factors are those of NIST SP 811
/// (2008), appendix B, exact.
///
/// Pound force and pound mass stay apart: where a force is wanted, lb, oz, kg and g are taken as
/// the pull of that weight under standard gravity, and `assumed` says so; where a mass is wanted, a
/// force is refused. Errors: a figure without a unit, a unit that does not exist or is of another
/// dimension, a decimal comma, anything that is no figure. Never locale dependent.
[[nodiscard]] Result<Measure> parse_measure(std::string_view text, Dimension wanted);

/// "22 mm", "0.875 in" … every unit of the dimension, for a hint.
[[nodiscard]] std::string units_of(Dimension dimension);

}  // namespace winchbook::base
