#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "knowledge/stock.h"

/// Does it fit, will it hold: washers in their seat, the drag they give, the line they pull.
namespace winchbook::assess::fitting {

/// From `low` to `high`, low <= high.
struct Span {
  double low = 0;
  double high = 0;
};

/// The rubbing ring of a friction washer, diameters in mm; 0 <= inner < outer.
struct Ring {
  double outer = 0;
  double inner = 0;
};

/// How the pressure lies on a rubbing ring. New washers press evenly; worn-in ones have worn until
/// pressure times radius is the same everywhere.
enum class PressureLaw { uniform_wear, uniform_pressure };

/// The torque in N·m at which `faces` rubbing faces slip under a force in N along the axis.
///
///     uniform wear      T = μ F N (ro + ri) / 2
///     uniform pressure  T = ⅔ μ F N (ro³ − ri³) / (ro² − ri²)
///
/// N counts rubbing faces, not washers. Example: 4000 N, μ 0.30, 250 and 175 mm, one face:
/// 127.5 N·m by wear, 128.82 N·m by pressure. Source: any machine design text's chapter on axial
/// clutches; the tests hold worked answers.
[[nodiscard]] double slip_torque(PressureLaw law, const Ring& ring, double friction, double force,
                                 int faces);

/// The force in N that presses the ring with a pressure in N/mm²: the greatest pressure, at the
/// inner edge, for wear, F = 2π p ri (ro − ri); the same everywhere for pressure, F = π p (ro² −
/// ri²).
[[nodiscard]] double clamping_force(PressureLaw law, const Ring& ring, double pressure);

/// The other way round: the greatest pressure in N/mm² that a force in N brings. Unbounded for wear
/// when the ring has no hole.
[[nodiscard]] double greatest_pressure(PressureLaw law, const Ring& ring, double force);

using knowledge::Turns;

/// How many faces rub and carry, from the stack in order from the gear's floor outwards. The floor
/// turns with the gear, the plate or spacer at the end with the sleeve. Two neighbours that turn
/// with the same thing never rub; a free washer carries on what its neighbours press on it, and of
/// its two faces the weaker slips, so between a gear side and a sleeve side it makes one face.
/// Example: free, sleeve, free, gear, free: 3.
[[nodiscard]] int rubbing_faces(const std::vector<Turns>& stack);

/// Diameters of the wound line in mm, 0 < empty < full.
struct SpoolFill {
  double full = 0;
  double empty = 0;
};

/// One drag, ready to be reckoned.
struct Drag {
  Ring ring;
  int faces = 1;
  Span friction;
  double force = 0;                ///< along the axis, N; or
  std::optional<double> pressure;  ///< N/mm², in the force's place
  double ratio = 1;                ///< turns of the spool for one of the part that slips
  std::optional<SpoolFill> spool;
  std::optional<double> line;  ///< strength of the line, N
};

/// The pull at the line at one fill.
struct Pull {
  int fill = 100;       ///< per hundred of the wound line still on the spool
  double diameter = 0;  ///< of the wound line, mm
  Span wear;            ///< N, by uniform wear
  Span pressure;        ///< N, by uniform pressure
};

struct DragFinding {
  Span force_wear;  ///< N along the axis; equal ends
  Span force_pressure;
  Span torque_wear;  ///< N·m at the part that slips
  Span torque_pressure;
  std::vector<Pull> pulls;  ///< 100, 75, 50, 25, 0 per hundred; empty without a spool
  /// What the setting should lie between, as a share of the line's strength; empty without a line.
  std::optional<Span> setting;
};

/// The share of the line's strength within which a drag is commonly set, at the line, spool full:
/// a quarter to a third. A range, not a rule (common practice; it is told with its caveats).
constexpr Span kSettingShare{1.0 / 4, 1.0 / 3};

/// The pull at one fill of a torque in N·m at the part that slips, `ratio` turns of the spool for
/// one of it.
[[nodiscard]] Pull pull_at(const SpoolFill& spool, double ratio, const Span& torque_wear,
                           const Span& torque_pressure, int fill);

/// The line's pull is torque through the gear over the radius of what is wound: F = T / (i r). The
/// wound volume falls in proportion to the line run out: r² = r0² + fill (r1² − r0²).
[[nodiscard]] DragFinding reckon_drag(const Drag& drag);

/// What keeps a drag from being reckoned, in a sentence; empty when nothing does. An inside that is
/// not smaller than the outside, no faces, friction outside (0, 1.5], a force that does not press,
/// an empty spool larger than a full one.
[[nodiscard]] std::string fault_of(const Drag& drag);

}  // namespace winchbook::assess::fitting
