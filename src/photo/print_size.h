#pragma once

#include <algorithm>
#include <cstddef>

namespace winchbook::photo {

/// The largest a photograph is ever printed is the cover: 471 × 375 points. At 300 to the inch, and
/// 72 points to the inch, that is 1963 × 1563 pixels, rounded up. Every photograph is kept at that
/// size: when it comes in nobody knows which will be the cover.
inline constexpr int kPrintWidth = (471 * 300 + 71) / 72;
inline constexpr int kPrintHeight = (375 * 300 + 71) / 72;

/// A camera's file above these is refused before it is decoded. 210 million pixels are the largest
/// that a telephone writes (16384 × 12288, and a little); 256 MB hold 40 million pixels of 16 bits
/// without compression.
inline constexpr long long kMostCameraPixels = 210'000'000;
inline constexpr int kMostCameraSide = 32'000;
inline constexpr std::size_t kMostCameraBytes = std::size_t{256} << 20U;

/// Pixels of a picture.
struct Size {
  int width = 0;
  int height = 0;

  friend bool operator==(const Size&, const Size&) = default;
};

/// True when an upright picture is no larger than it is ever printed.
[[nodiscard]] constexpr bool fits_print(Size upright) {
  return upright.width <= kPrintWidth && upright.height <= kPrintHeight;
}

/// The size at which an upright picture is kept: the whole of it within 1963 × 1563, never larger
/// than it is. 4000 × 3000 gives 1963 × 1472: min(1963 ÷ 4000, 1563 ÷ 3000) = 0.49075, each side
/// times that, rounded to the nearest, at least 1.
[[nodiscard]] constexpr Size print_size(Size upright) {
  if (fits_print(upright) || upright.width <= 0 || upright.height <= 0) return upright;
  const long long width = upright.width;
  const long long height = upright.height;
  // by the side that binds: width ÷ height compared with 1963 ÷ 1563, without fractions
  const bool wide = width * kPrintHeight >= height * kPrintWidth;
  const auto part = [](long long of, long long most, long long whole) {
    return static_cast<int>(std::max(1LL, (of * most * 2 + whole) / (whole * 2)));
  };
  return wide ? Size{kPrintWidth, part(height, kPrintWidth, width)}
              : Size{part(width, kPrintHeight, height), kPrintHeight};
}

}  // namespace winchbook::photo
