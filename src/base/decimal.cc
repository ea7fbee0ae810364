#include "base/decimal.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

namespace winchbook::base {
namespace {

constexpr int kMostPlaces = 9;
constexpr std::size_t kMostDigits = 15;

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

/// units × 10^more, wide enough for any two decimals this class can hold.
__extension__ using Wide = __int128;

Wide scaled_to(Decimal number, int places) {
  Wide units = number.units();
  for (int at = number.places(); at < places; ++at)
    units *= 10;
  return units;
}

}  // namespace

Result<Decimal> Decimal::parse(std::string_view text) {
  const auto refuse = [&] {
    return error(fmt::format("\"{}\" is not a number, expected digits such as 12 or 12.50", text),
                 "write plain digits with a point, without grouping or unit", "number");
  };
  std::string_view rest = text;
  const bool negative = !rest.empty() && rest.front() == '-';
  if (negative) rest.remove_prefix(1);
  const std::size_t point = rest.find('.');
  const std::string_view whole = rest.substr(0, point);
  const std::string_view fraction =
      point == std::string_view::npos ? std::string_view{} : rest.substr(point + 1);
  const std::string digits = std::string(whole) + std::string(fraction);
  const bool shaped = !whole.empty() && (point == std::string_view::npos || !fraction.empty()) &&
                      std::all_of(digits.begin(), digits.end(), is_digit);
  if (!shaped) return refuse();
  if (digits.size() > kMostDigits || fraction.size() > kMostPlaces) {
    return error(fmt::format("\"{}\" has {} digits, expected at most {}, of them at most {} after "
                             "the point",
                             text, digits.size(), kMostDigits, kMostPlaces),
                 "round it to what was measured", "number");
  }
  std::int64_t units = 0;
  std::from_chars(digits.data(), digits.data() + digits.size(), units);
  return Decimal(negative ? -units : units, static_cast<int>(fraction.size()));
}

std::string Decimal::text() const {
  std::string digits = std::to_string(units_ < 0 ? -units_ : units_);
  const auto places = static_cast<std::size_t>(places_);
  if (digits.size() <= places) digits.insert(0, places + 1 - digits.size(), '0');
  if (places > 0) digits.insert(digits.size() - places, 1, '.');
  return (units_ < 0 ? "-" : "") + digits;
}

double Decimal::approximate() const {
  // The nearest binary number to the written text, not a product of two roundings.
  const std::string written = text();
  double value = 0.0;
  std::from_chars(written.data(), written.data() + written.size(), value);
  return value;
}

Decimal operator+(Decimal a, Decimal b) {
  const int places = std::max(a.places_, b.places_);
  return {static_cast<std::int64_t>(scaled_to(a, places) + scaled_to(b, places)), places};
}

Decimal operator-(Decimal a, Decimal b) {
  return a + Decimal(-b.units_, b.places_);
}

std::strong_ordering operator<=>(Decimal a, Decimal b) {
  const int places = std::max(a.places_, b.places_);
  const Wide left = scaled_to(a, places);
  const Wide right = scaled_to(b, places);
  if (left < right) return std::strong_ordering::less;
  return left > right ? std::strong_ordering::greater : std::strong_ordering::equal;
}

}  // namespace winchbook::base
