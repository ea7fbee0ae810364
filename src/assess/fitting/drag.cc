#include "assess/fitting/drag.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace winchbook::assess::fitting {
namespace {

constexpr double kMetre = 1000;  // mm
constexpr double kMostFriction = 1.5;

Span torque(PressureLaw law, const Drag& drag, double force) {
  return {slip_torque(law, drag.ring, drag.friction.low, force, drag.faces),
          slip_torque(law, drag.ring, drag.friction.high, force, drag.faces)};
}

/// N at the line of a torque in N·m, through the gear, over a diameter in mm.
Span at_line(const Span& torque, double ratio, double diameter) {
  const double radius = diameter / 2 / kMetre;
  return {torque.low / ratio / radius, torque.high / ratio / radius};
}

}  // namespace

Pull pull_at(const SpoolFill& spool, double ratio, const Span& torque_wear,
             const Span& torque_pressure, int fill) {
  Pull pull;
  pull.fill = fill;
  pull.diameter = std::sqrt(spool.empty * spool.empty +
                            fill / 100.0 * (spool.full * spool.full - spool.empty * spool.empty));
  pull.wear = at_line(torque_wear, ratio, pull.diameter);
  pull.pressure = at_line(torque_pressure, ratio, pull.diameter);
  return pull;
}

double slip_torque(PressureLaw law, const Ring& ring, double friction, double force, int faces) {
  const double outer = ring.outer / 2 / kMetre;
  const double inner = ring.inner / 2 / kMetre;
  const double arm =
      law == PressureLaw::uniform_wear
          ? (outer + inner) / 2
          : 2.0 / 3 * (std::pow(outer, 3) - std::pow(inner, 3)) / (outer * outer - inner * inner);
  return friction * force * faces * arm;
}

double clamping_force(PressureLaw law, const Ring& ring, double pressure) {
  const double outer = ring.outer / 2;
  const double inner = ring.inner / 2;
  if (law == PressureLaw::uniform_wear) {
    return 2 * std::numbers::pi * pressure * inner * (outer - inner);
  }
  return std::numbers::pi * pressure * (outer * outer - inner * inner);
}

double greatest_pressure(PressureLaw law, const Ring& ring, double force) {
  const double of_one = clamping_force(law, ring, 1);
  return of_one > 0 ? force / of_one : std::numeric_limits<double>::infinity();
}

int rubbing_faces(const std::vector<Turns>& stack) {
  int faces = 0;
  Turns last = Turns::with_gear;
  const auto meets = [&](Turns next) {
    if (next == Turns::freely) return;
    if (next != last) ++faces;
    last = next;
  };
  std::for_each(stack.begin(), stack.end(), meets);
  meets(Turns::with_sleeve);
  return faces;
}

DragFinding reckon_drag(const Drag& drag) {
  DragFinding finding;
  double wear = drag.force;
  double even = drag.force;
  if (drag.pressure) {
    wear = clamping_force(PressureLaw::uniform_wear, drag.ring, *drag.pressure);
    even = clamping_force(PressureLaw::uniform_pressure, drag.ring, *drag.pressure);
  }
  finding.force_wear = {wear, wear};
  finding.force_pressure = {even, even};
  finding.torque_wear = torque(PressureLaw::uniform_wear, drag, wear);
  finding.torque_pressure = torque(PressureLaw::uniform_pressure, drag, even);
  if (drag.spool) {
    for (const int fill : {100, 75, 50, 25, 0}) {
      finding.pulls.push_back(
          pull_at(*drag.spool, drag.ratio, finding.torque_wear, finding.torque_pressure, fill));
    }
  }
  if (drag.line) {
    finding.setting = Span{*drag.line * kSettingShare.low, *drag.line * kSettingShare.high};
  }
  return finding;
}

std::string fault_of(const Drag& drag) {
  if (drag.ring.inner < 0 || drag.ring.outer <= 0) return "a diameter is below zero";
  if (drag.ring.inner >= drag.ring.outer) {
    return "the inside of the washer is not smaller than its outside";
  }
  if (drag.faces < 1) return "no faces rub: there is no drag to work out";
  if (drag.friction.low <= 0 || drag.friction.high > kMostFriction ||
      drag.friction.low > drag.friction.high) {
    return "the friction is not between 0 and 1.5, its low end first";
  }
  if (drag.pressure ? *drag.pressure <= 0 : drag.force <= 0) return "nothing presses the washers";
  if (drag.pressure && drag.ring.inner <= 0) {
    return "a washer without a hole gives no drag from its pressure";
  }
  if (drag.ratio <= 0) return "the gear's ratio is not above zero";
  if (drag.spool && (drag.spool->empty <= 0 || drag.spool->empty >= drag.spool->full)) {
    return "the empty spool is not smaller than the full one";
  }
  if (drag.line && *drag.line <= 0) return "the line has no strength";
  return {};
}

}  // namespace winchbook::assess::fitting
