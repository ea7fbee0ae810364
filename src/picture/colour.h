#pragma once

#include <string>

#include "picture/raster.h"

/// Colours into sRGB (IEC 61966-2-1), by Little CMS.
namespace winchbook::picture {

/// A chromaticity, CIE 1931 xy.
struct Chromaticity {
  double x = 0;
  double y = 0;
};

struct Primaries {
  Chromaticity white;
  Chromaticity red;
  Chromaticity green;
  Chromaticity blue;
};

/// IEC 61966-2-1 (those of ITU-R BT.709).
inline constexpr Primaries kSrgbPrimaries{
    {0.3127, 0.3290}, {0.64, 0.33}, {0.30, 0.60}, {0.15, 0.06}};

/// A profile (ICC.1) with these primaries and samples = light to the power of 1 ÷ gamma; empty when
/// the primaries make no sense.
[[nodiscard]] std::string profile_with_gamma(const Primaries& primaries, double gamma);
/// The same for grey.
[[nodiscard]] std::string grey_profile_with_gamma(double gamma);
/// The same with sRGB's own curve.
[[nodiscard]] std::string profile_with_srgb_curve(const Primaries& primaries);
/// Adobe RGB (1998): its primaries, gamma 563 ÷ 256.
[[nodiscard]] std::string adobe_rgb_profile();

/// What came of the colours.
struct Coloured {
  Raster raster;                  ///< grey or rgb, 8 bits, in sRGB
  bool recoloured = false;        ///< a profile was followed
  bool profile_unusable = false;  ///< it made no sense, and the samples were taken as sRGB
};

/// True when a profile of this space says the same as sRGB, or there is none: 729 colours come out
/// within 2 of 255 of themselves (grey: 256 of them).
[[nodiscard]] bool is_srgb(const std::string& profile, Space space);

/// Into sRGB, relative to the white of the paper, black point compensated; grey stays grey. Error:
/// ink colours without a profile that could be followed.
[[nodiscard]] base::Result<Coloured> in_srgb(Raster raster, const std::string& profile);

}  // namespace winchbook::picture
