#pragma once

#include <compare>
#include <cstdint>

namespace winchbook::base {

/// A length on paper in whole thousandths of a point (1 pt = 1/72 inch); y runs downwards.
struct Length {
  std::int32_t thousandths = 0;

  friend constexpr auto operator<=>(Length, Length) = default;
  friend constexpr Length operator+(Length a, Length b) { return {a.thousandths + b.thousandths}; }
  friend constexpr Length operator-(Length a, Length b) { return {a.thousandths - b.thousandths}; }
  friend constexpr Length operator-(Length a) { return {-a.thousandths}; }
  friend constexpr Length operator*(Length a, int n) { return {a.thousandths * n}; }
  friend constexpr Length operator*(int n, Length a) { return a * n; }
  friend constexpr Length operator/(Length a, int n) { return {a.thousandths / n}; }
  constexpr Length& operator+=(Length b) { return *this = *this + b; }
  constexpr Length& operator-=(Length b) { return *this = *this - b; }
};

/// `points(7.25)`: rounds to the nearest thousandth.
[[nodiscard]] constexpr Length points(double pt) {
  return {static_cast<std::int32_t>(pt * 1000.0 + (pt < 0 ? -0.5 : 0.5))};
}

/// `a · numerator / denominator` without overflow, rounded towards zero.
[[nodiscard]] constexpr Length scaled(Length a, std::int64_t numerator, std::int64_t denominator) {
  return {static_cast<std::int32_t>(a.thousandths * numerator / denominator)};
}

[[nodiscard]] constexpr double to_points(Length a) {
  return a.thousandths / 1000.0;
}

struct Point {
  Length x;
  Length y;
  friend bool operator==(const Point&, const Point&) = default;
};

/// Top left corner, width and height.
struct Rect {
  Length x;
  Length y;
  Length width;
  Length height;
  friend bool operator==(const Rect&, const Rect&) = default;
};

}  // namespace winchbook::base
