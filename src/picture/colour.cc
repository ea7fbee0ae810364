#include "picture/colour.h"

#include <lcms2.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <cstring>
#include <memory>
#include <type_traits>
#include <utility>

namespace winchbook::picture {
namespace {

struct CloseProfile {
  void operator()(void* profile) const { cmsCloseProfile(profile); }
};
struct DeleteTransform {
  void operator()(void* transform) const { cmsDeleteTransform(transform); }
};
struct FreeCurve {
  void operator()(cmsToneCurve* curve) const { cmsFreeToneCurve(curve); }
};
using Profile = std::unique_ptr<void, CloseProfile>;
using Transform = std::unique_ptr<void, DeleteTransform>;
using Curve = std::unique_ptr<cmsToneCurve, FreeCurve>;

/// sRGB's curve: IEC 61966-2-1, as ICC.1 writes it (parametric, type 4 of Little CMS).
Curve srgb_curve() {
  const double parameters[] = {2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045};
  return Curve(cmsBuildParametricToneCurve(nullptr, 4, parameters));
}

std::string saved(const Profile& profile) {
  cmsUInt32Number length = 0;
  if (!profile || cmsSaveProfileToMem(profile.get(), nullptr, &length) == FALSE) return {};
  std::string bytes(length, '\0');
  if (cmsSaveProfileToMem(profile.get(), bytes.data(), &length) == FALSE) return {};
  return bytes;
}

std::string profile_with(const Primaries& primaries, const Curve& curve) {
  const auto triple = [](const Chromaticity& one) { return cmsCIExyY{one.x, one.y, 1}; };
  const cmsCIExyY white = triple(primaries.white);
  const cmsCIExyYTRIPLE colours{triple(primaries.red), triple(primaries.green),
                                triple(primaries.blue)};
  cmsToneCurve* curves[] = {curve.get(), curve.get(), curve.get()};
  if (!curve || !(primaries.white.y > 0)) return {};
  return saved(Profile(cmsCreateRGBProfile(&white, &colours, curves)));
}

Profile srgb(Space space) {
  if (space != Space::grey) return Profile(cmsCreate_sRGBProfile());
  const Curve curve = srgb_curve();
  return Profile(cmsCreateGrayProfile(cmsD50_xyY(), curve.get()));
}

cmsColorSpaceSignature signature_of(Space space) {
  return space == Space::grey  ? cmsSigGrayData
         : space == Space::rgb ? cmsSigRgbData
                               : cmsSigCmykData;
}

/// Null when the bytes are no profile, or one for other samples.
Profile opened(const std::string& bytes, Space space) {
  Profile profile(cmsOpenProfileFromMem(bytes.data(), static_cast<cmsUInt32Number>(bytes.size())));
  if (profile && cmsGetColorSpace(profile.get()) != signature_of(space)) profile.reset();
  return profile;
}

cmsUInt32Number format_of(const Raster& raster) {
  const auto bytes = static_cast<cmsUInt32Number>(raster.sample_bytes);
  switch (raster.space) {
    case Space::grey:
      return COLORSPACE_SH(PT_GRAY) | CHANNELS_SH(1) | BYTES_SH(bytes);
    case Space::rgb:
      return COLORSPACE_SH(PT_RGB) | CHANNELS_SH(3) | BYTES_SH(bytes);
    case Space::cmyk:
      return COLORSPACE_SH(PT_CMYK) | CHANNELS_SH(4) | BYTES_SH(bytes) |
             FLAVOR_SH(raster.ink_inverted ? 1 : 0);
  }
  return 0;
}

Transform transform_of(const Profile& from, cmsUInt32Number format, Space to) {
  const Profile target = srgb(to);
  return Transform(cmsCreateTransform(
      from.get(), format, target.get(), to == Space::grey ? TYPE_GRAY_8 : TYPE_RGB_8,
      INTENT_RELATIVE_COLORIMETRIC, cmsFLAGS_BLACKPOINTCOMPENSATION));
}

/// 16 bits to 8, rounded: 65535 = 255 × 257.
void cut_to_8_bits(Raster& raster) {
  const std::size_t count = raster.samples.size() / 2;
  for (std::size_t i = 0; i < count; ++i) {
    std::uint16_t sample = 0;
    std::memcpy(&sample, raster.samples.data() + 2 * i, sizeof(sample));
    raster.samples[i] = static_cast<unsigned char>((sample + 128U) / 257U);
  }
  raster.samples.resize(count);
  raster.sample_bytes = 1;
}

/// Colours through the whole space, 9 steps each way.
std::vector<unsigned char> colours_to_try(Space space) {
  std::vector<unsigned char> colours;
  if (space == Space::grey) {
    for (int i = 0; i < 256; ++i)
      colours.push_back(static_cast<unsigned char>(i));
    return colours;
  }
  constexpr int kSteps = 9;
  const auto value = [](int step) { return static_cast<unsigned char>(step * 255 / (kSteps - 1)); };
  for (int i = 0; i < kSteps * kSteps * kSteps; ++i) {
    colours.insert(colours.end(),
                   {value(i / (kSteps * kSteps)), value(i / kSteps % kSteps), value(i % kSteps)});
  }
  return colours;
}

}  // namespace

std::string profile_with_gamma(const Primaries& primaries, double gamma) {
  return profile_with(primaries, Curve(cmsBuildGamma(nullptr, gamma)));
}

std::string grey_profile_with_gamma(double gamma) {
  const Curve curve(cmsBuildGamma(nullptr, gamma));
  return curve ? saved(Profile(cmsCreateGrayProfile(cmsD50_xyY(), curve.get()))) : std::string();
}

std::string profile_with_srgb_curve(const Primaries& primaries) {
  return profile_with(primaries, srgb_curve());
}

std::string adobe_rgb_profile() {
  constexpr Primaries kAdobeRgb{{0.3127, 0.3290}, {0.64, 0.33}, {0.21, 0.71}, {0.15, 0.06}};
  return profile_with_gamma(kAdobeRgb, 563.0 / 256.0);
}

bool is_srgb(const std::string& bytes, Space space) {
  constexpr int kMostApart = 2;
  if (bytes.empty()) return space != Space::cmyk;
  if (space == Space::cmyk) return false;
  const Profile profile = opened(bytes, space);
  if (!profile) return false;
  const Transform transform =
      transform_of(profile, space == Space::grey ? TYPE_GRAY_8 : TYPE_RGB_8, space);
  if (!transform) return false;
  const std::vector<unsigned char> colours = colours_to_try(space);
  std::vector<unsigned char> came(colours.size());
  cmsDoTransform(transform.get(), colours.data(), came.data(),
                 static_cast<cmsUInt32Number>(colours.size() / (space == Space::grey ? 1 : 3)));
  return std::equal(colours.begin(), colours.end(), came.begin(),
                    [](int a, int b) { return std::abs(a - b) <= kMostApart; });
}

base::Result<Coloured> in_srgb(Raster raster, const std::string& bytes) {
  const Profile profile = opened(bytes, raster.space);
  const Space to = raster.space == Space::grey ? Space::grey : Space::rgb;
  const Transform transform = profile ? transform_of(profile, format_of(raster), to) : Transform();
  if (!transform) {
    if (raster.space == Space::cmyk) {
      return refuse("is in ink colours (CMYK) without a colour profile that could be followed",
                    "save it as RGB", "photo-colour");
    }
    if (raster.sample_bytes == 2) cut_to_8_bits(raster);
    return Coloured{std::move(raster), false, !bytes.empty()};
  }
  Raster target{raster.size, to};
  target.allocate();
  for (int y = 0; y < raster.size.height; ++y) {
    cmsDoTransform(transform.get(), raster.row(y), target.row(y),
                   static_cast<cmsUInt32Number>(raster.size.width));
  }
  return Coloured{std::move(target), !is_srgb(bytes, raster.space), false};
}

}  // namespace winchbook::picture
