#include "assess/fitting/line.h"

#include <numbers>

namespace winchbook::assess::fitting {
namespace {

double room(const LineLoad& load) {
  return load.length * load.diameter * load.diameter;
}

}  // namespace

double capacity(const LineLoad& known, double diameter) {
  return room(known) / (diameter * diameter);
}

std::optional<double> backing(const LineLoad& known, const LineLoad& wanted,
                              double backing_diameter) {
  const double left = room(known) - room(wanted);
  if (left < 0) return std::nullopt;
  return left / (backing_diameter * backing_diameter);
}

double retrieve(double wound_diameter, double ratio) {
  return std::numbers::pi * wound_diameter * ratio;
}

}  // namespace winchbook::assess::fitting
