#pragma once

#include <optional>

namespace winchbook::assess::fitting {

/// Line of one diameter that a spool holds; metres and millimetres.
struct LineLoad {
  double length = 0;
  double diameter = 0;
};

/// How much of another diameter fills the same spool: L2 = L1 (d1 / d2)². Example: 200 m of 0.30 mm
/// make 450 m of 0.20 mm. Flat or loosely wound line holds less (common practice).
[[nodiscard]] double capacity(const LineLoad& known, double diameter);

/// Metres of backing under `wanted` that fill the spool: what the wanted line leaves of the room,
/// in the backing's diameter. Empty when the wanted line alone is more than the spool holds.
[[nodiscard]] std::optional<double> backing(const LineLoad& known, const LineLoad& wanted,
                                            double backing_diameter);

/// Millimetres of line wound by one turn of the handle at a wound diameter in mm: π D i, where i is
/// turns of the spool (or rotor) for one of the handle. Example: 45 mm, 4 : 1: 565.49 mm.
[[nodiscard]] double retrieve(double wound_diameter, double ratio);

}  // namespace winchbook::assess::fitting
