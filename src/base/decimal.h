#pragma once

#include <compare>
#include <cstdint>
#include <string>
#include <string_view>

#include "base/result.h"

namespace winchbook::base {

/// An exact decimal number: `units` × 10^-`places`. "12.50" keeps its two places when it is
/// printed; comparison is by value, so 12.5 equals 12.50.
class Decimal {
 public:
  constexpr Decimal() = default;
  constexpr Decimal(std::int64_t units, int places) : units_(units), places_(places) {}

  /// Reads "-12.50" or "7": an optional sign, digits, and at most nine digits after a point.
  /// No exponent, no grouping, no locale. Error when it is anything else or has over fifteen
  /// digits.
  [[nodiscard]] static Result<Decimal> parse(std::string_view text);

  [[nodiscard]] constexpr std::int64_t units() const { return units_; }
  [[nodiscard]] constexpr int places() const { return places_; }
  /// With as many places as it was written with.
  [[nodiscard]] std::string text() const;
  /// The nearest binary number; for geometry and statistics, never for money.
  [[nodiscard]] double approximate() const;

  friend Decimal operator+(Decimal a, Decimal b);
  friend Decimal operator-(Decimal a, Decimal b);
  friend std::strong_ordering operator<=>(Decimal a, Decimal b);
  friend bool operator==(Decimal a, Decimal b) { return (a <=> b) == std::strong_ordering::equal; }

 private:
  std::int64_t units_ = 0;
  int places_ = 0;
};

/// An amount in one currency (ISO 4217, three capital letters).
struct Money {
  Decimal amount;
  std::string currency;

  friend bool operator==(const Money&, const Money&) = default;
};

/// A measured value in one fixed unit; the tag is the unit, so that millimetres never meet grams.
template <class Unit> struct Quantity {
  Decimal value;

  friend bool operator==(const Quantity&, const Quantity&) = default;
  friend auto operator<=>(const Quantity&, const Quantity&) = default;
};

using Millimetres = Quantity<struct MillimetreUnit>;
using SquareMillimetres = Quantity<struct SquareMillimetreUnit>;
using Grams = Quantity<struct GramUnit>;
using Newtons = Quantity<struct NewtonUnit>;
using Hours = Quantity<struct HourUnit>;
using Minutes = Quantity<struct MinuteUnit>;
/// Per hundred, 0 to 100.
using Percent = Quantity<struct PercentUnit>;

}  // namespace winchbook::base
