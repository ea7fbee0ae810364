#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "base/result.h"

/// Photographs in: what a JPEG is, and whether it is whole. `check` decodes every picture to its
/// last row; `issue` has no second for that, compares fingerprints and reads headers, so that a
/// picture that was swapped stops it.
namespace winchbook::photo {

/// Beyond these a picture is refused before it is decoded. A cover 471 points wide needs 2000
/// pixels at 300 to the inch.
inline constexpr int kMostPixelsOnASide = 20000;
inline constexpr long long kMostPixels = 100'000'000;
inline constexpr std::size_t kMostBytes = std::size_t{64} << 20U;

/// How the picture must be turned to stand upright: the values of the Exif tag Orientation
/// (0x0112).
enum class Orientation {
  upright = 1,
  mirrored = 2,
  turned_180 = 3,
  mirrored_turned_180 = 4,
  mirrored_turned_270 = 5,  ///< mirror left to right, then turn 270 degrees clockwise
  turned_90 = 6,            ///< turn 90 degrees clockwise to stand upright
  mirrored_turned_90 = 7,
  turned_270 = 8,
};

enum class Colour { grey, rgb };

/// What a JPEG says of itself.
struct JpegFacts {
  int width = 0;  ///< pixels as stored, before any turning
  int height = 0;
  Colour colour = Colour::rgb;
  Orientation orientation = Orientation::upright;
  std::string icc_profile;         ///< its colour profile (ICC.1), empty when it has none
  bool tells_where_taken = false;  ///< Exif data with a GPS part
};

/// Reads the headers. Error, in a sentence that begins with "the photograph", when the bytes are
/// empty, another kind of file, a JPEG that PDF cannot hold (arithmetic coding, 12 bits, four
/// colours), absurdly large, or without the end marker.
[[nodiscard]] base::Result<JpegFacts> inspect(std::string_view bytes);

/// The same, and decodes every row: error also when the file is cut short or damaged.
[[nodiscard]] base::Result<JpegFacts> decode(std::string_view bytes);

}  // namespace winchbook::photo
