#pragma once

#include <compare>
#include <cstdint>

namespace winchbook::base {

/// Room for products that do not fit 64 bits.
__extension__ using Wide = __int128;

/// An exact fraction of the whole: part / whole, in lowest terms, whole > 0. May be negative or
/// over one. 0.9125 of the whole is 91.25 in a hundred.
class Ratio {
 public:
  constexpr Ratio() = default;
  /// Error of the caller when `whole` is not positive.
  constexpr Ratio(Wide part, Wide whole) {
    const Wide common = greatest_common_divisor(part < 0 ? -part : part, whole);
    part_ = part / common;
    whole_ = whole / common;
  }

  [[nodiscard]] constexpr Wide part() const { return part_; }
  [[nodiscard]] constexpr Wide whole() const { return whole_; }

  /// How many `steps` of a whole it is, rounded half away from zero: steps 100 gives whole points,
  /// 1000 tenths of a point, 10000 hundredths of a point.
  [[nodiscard]] constexpr std::int64_t rounded(std::int64_t steps) const {
    const Wide scaled = part_ * steps;
    const Wide half = whole_ / 2 + whole_ % 2;
    const Wide up = scaled < 0 ? scaled - whole_ + half : scaled + whole_ - half;
    return static_cast<std::int64_t>(up / whole_);
  }
  /// The same, rounded down (towards minus infinity).
  [[nodiscard]] constexpr std::int64_t floored(std::int64_t steps) const {
    const Wide scaled = part_ * steps;
    const Wide down = scaled / whole_;
    return static_cast<std::int64_t>(scaled % whole_ < 0 ? down - 1 : down);
  }

  // Sums of parts of one whole stay below that whole; the products never leave 128 bits.
  friend constexpr Ratio operator+(Ratio a, Ratio b) {
    const Wide common = greatest_common_divisor(a.whole_, b.whole_);
    return {a.part_ * (b.whole_ / common) + b.part_ * (a.whole_ / common),
            a.whole_ / common * b.whole_};
  }
  friend constexpr Ratio operator-(Ratio a) { return {-a.part_, a.whole_}; }
  friend constexpr Ratio operator-(Ratio a, Ratio b) { return a + -b; }
  friend constexpr Ratio operator*(Ratio a, Ratio b) {
    const Ratio left(a.part_, b.whole_);
    const Ratio right(b.part_, a.whole_);
    return {left.part_ * right.part_, left.whole_ * right.whole_};
  }
  friend constexpr bool operator==(Ratio a, Ratio b) {
    return a.part_ == b.part_ && a.whole_ == b.whole_;
  }
  friend constexpr std::strong_ordering operator<=>(Ratio a, Ratio b) {
    const Wide difference = (a - b).part_;
    return difference < 0   ? std::strong_ordering::less
           : difference > 0 ? std::strong_ordering::greater
                            : std::strong_ordering::equal;
  }

 private:
  static constexpr Wide greatest_common_divisor(Wide a, Wide b) {
    while (b != 0) {
      const Wide rest = a % b;
      a = b;
      b = rest;
    }
    return a;
  }

  Wide part_ = 0;
  Wide whole_ = 1;
};

/// From `low` to `high`, low <= high; equal when nothing is left open.
struct RatioRange {
  Ratio low;
  Ratio high;

  [[nodiscard]] constexpr bool exact() const { return low == high; }
  friend constexpr bool operator==(const RatioRange&, const RatioRange&) = default;
};

/// A share as it is told, in steps of the whole.
struct ToldShare {
  std::int64_t low = 0;
  std::int64_t high = 0;
};

/// How every share is told in `steps` of a whole: a range outwards, so that it never claims more
/// than it is; an exact share to the nearest step, but as all or nothing only when it is. Example,
/// in points: 99.5 to 100 is 99 to 100; 99.7 alone is 99.
[[nodiscard]] constexpr ToldShare told(const RatioRange& share, std::int64_t steps) {
  if (!share.exact()) return {share.low.floored(steps), -(-share.high).floored(steps)};
  std::int64_t one = share.low.rounded(steps);
  if (one == steps && share.low < Ratio(1, 1)) --one;
  if (one == 0 && share.low > Ratio()) ++one;
  return {one, one};
}

}  // namespace winchbook::base
