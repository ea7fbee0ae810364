#include "picture/colour.h"

#include <doctest/doctest.h>

#include <cmath>
#include <cstdlib>
#include <cstring>
#include <string>
#include <vector>

namespace winchbook::picture {
namespace {

Raster of_one_pixel(Space space, const std::vector<unsigned char>& samples) {
  Raster raster{{1, 1}, space};
  raster.samples = samples;
  return raster;
}

/// Display P3 has the primaries of SMPTE RP 431-2 with D65 and sRGB's curve.
constexpr Primaries kDisplayP3{{0.3127, 0.3290}, {0.680, 0.320}, {0.265, 0.690}, {0.150, 0.060}};

TEST_CASE("a profile that says the same as sRGB is sRGB, whatever it is called") {
  CHECK(is_srgb("", Space::rgb));
  CHECK(is_srgb("", Space::grey));
  CHECK_FALSE(is_srgb("", Space::cmyk));
  CHECK(is_srgb(profile_with_srgb_curve(kSrgbPrimaries), Space::rgb));
  CHECK_FALSE(is_srgb(profile_with_srgb_curve(kDisplayP3), Space::rgb));
  CHECK_FALSE(is_srgb(profile_with_gamma(kSrgbPrimaries, 1.8), Space::rgb));
  CHECK_FALSE(is_srgb(adobe_rgb_profile(), Space::rgb));
  CHECK_FALSE(is_srgb("no profile at all", Space::rgb));
}

TEST_CASE("grey of a wide space is the same grey in sRGB") {
  const auto coloured =
      in_srgb(of_one_pixel(Space::rgb, {128, 128, 128}), profile_with_srgb_curve(kDisplayP3));
  REQUIRE(coloured);
  CHECK(coloured->recoloured);
  for (const unsigned char sample : coloured->raster.samples)
    CHECK(std::abs(sample - 128) <= 1);
}

TEST_CASE("a wide space's own red is beyond sRGB and is held at its edge") {
  const auto coloured =
      in_srgb(of_one_pixel(Space::rgb, {255, 0, 0}), profile_with_srgb_curve(kDisplayP3));
  REQUIRE(coloured);
  CHECK(coloured->raster.samples == std::vector<unsigned char>{255, 0, 0});
}

TEST_CASE("grey with another gamma comes out by the two curves") {
  // 128 at gamma 1.8: light (128 ÷ 255)^1.8 = 0.2891; sRGB: 1.055 × 0.2891^(1 ÷ 2.4) − 0.055
  // = 0.5741, 146 of 255
  const auto coloured = in_srgb(of_one_pixel(Space::grey, {128}), grey_profile_with_gamma(1.8));
  REQUIRE(coloured);
  CHECK(coloured->raster.space == Space::grey);
  CHECK(std::abs(coloured->raster.samples.front() - 146) <= 1);
}

TEST_CASE("16 bits become 8, rounded") {
  Raster raster{{3, 1}, Space::grey, false, 2};
  raster.allocate();
  const unsigned short samples[] = {65535, 128 * 257, 128 * 257 + 129};
  std::memcpy(raster.samples.data(), samples, sizeof(samples));
  const auto coloured = in_srgb(raster, "");
  REQUIRE(coloured);
  CHECK(coloured->raster.samples == std::vector<unsigned char>{255, 128, 129});
}

TEST_CASE("a profile that makes no sense is told, and not followed") {
  const auto coloured = in_srgb(of_one_pixel(Space::rgb, {10, 20, 30}), "nonsense");
  REQUIRE(coloured);
  CHECK(coloured->profile_unusable);
  CHECK_FALSE(coloured->recoloured);
  CHECK(coloured->raster.samples == std::vector<unsigned char>{10, 20, 30});
  const auto other = in_srgb(of_one_pixel(Space::grey, {10}), adobe_rgb_profile());
  REQUIRE(other);
  CHECK(other->profile_unusable);
}

TEST_CASE("ink colours without a profile are nobody's guess") {
  const auto coloured = in_srgb(of_one_pixel(Space::cmyk, {1, 2, 3, 4}), "");
  REQUIRE_FALSE(coloured);
  CHECK(coloured.faults().front().rule == "photo-colour");
}

TEST_CASE("primaries that make no sense give no profile") {
  CHECK(profile_with_srgb_curve({{0, 0}, {0, 0}, {0, 0}, {0, 0}}).empty());
}

}  // namespace
}  // namespace winchbook::picture
