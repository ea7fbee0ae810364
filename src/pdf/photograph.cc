#include "pdf/photograph.h"

#include <fmt/format.h>

#include <algorithm>

namespace winchbook::pdf {
namespace {

const char* device_space(int components) {
  return components == 1 ? "DeviceGray" : components == 4 ? "DeviceCMYK" : "DeviceRGB";
}

/// True when the profile's header speaks of as many components (ICC.1:2010, 7.2: colour space at
/// byte 16).
bool fits(std::string_view profile, int components) {
  constexpr std::size_t kHeader = 128;
  if (profile.size() < kHeader) return false;
  const std::string_view space = profile.substr(16, 4);
  return space == (components == 1 ? "GRAY" : components == 4 ? "CMYK" : "RGB ");
}

}  // namespace

std::array<int, 6> upright(int orientation) {
  switch (orientation) {
    case 2:
      return {-1, 0, 0, 1, 1, 0};
    case 3:
      return {-1, 0, 0, -1, 1, 1};
    case 4:
      return {1, 0, 0, -1, 0, 1};
    case 5:
      return {0, -1, -1, 0, 1, 1};
    case 6:
      return {0, -1, 1, 0, 0, 1};
    case 7:
      return {0, 1, 1, 0, 0, 0};
    case 8:
      return {0, 1, -1, 0, 1, 0};
    default:
      return {1, 0, 0, 1, 0, 0};
  }
}

const Jpeg* Photographs::find(const std::string& id) const {
  const auto found =
      std::find_if(jpegs_.begin(), jpegs_.end(), [&](const Jpeg& jpeg) { return jpeg.id == id; });
  return found == jpegs_.end() ? nullptr : &*found;
}

std::string Photographs::colour_space(const Jpeg& jpeg) {
  if (!fits(jpeg.icc, jpeg.components)) return fmt::format("/{}", device_space(jpeg.components));
  const Object*& profile = profiles_[jpeg.icc];
  if (profile == nullptr) {
    Object& made = haru_.add_deflated(jpeg.icc);
    made.entries +=
        fmt::format("/N {}/Alternate/{}", jpeg.components, device_space(jpeg.components));
    profile = &made;
  }
  return fmt::format("[/ICCBased {}]", profile->reference());
}

base::Result<std::string> Photographs::name(const Jpeg& jpeg) {
  const auto known = names_.find(jpeg.id);
  if (known != names_.end()) return known->second;
  if (jpeg.components == 4 && !fits(jpeg.icc, 4)) {
    return base::error(
        fmt::format("photograph \"{}\" is in CMYK without a colour profile, expected RGB, grey, or "
                    "a profile",
                    jpeg.id),
        "save it as an sRGB JPEG", "photo-colour");
  }
  const std::string space = colour_space(jpeg);
  Object& object = haru_.add_stream(jpeg.bytes);
  object.entries = fmt::format(
      "/Type/XObject/Subtype/Image/Width {}/Height {}/BitsPerComponent 8/ColorSpace{}/Filter"
      "/DCTDecode",
      jpeg.width, jpeg.height, space);
  if (jpeg.components == 4 && jpeg.adobe_inverted) object.entries += "/Decode[1 0 1 0 1 0 1 0]";
  embedded_[jpeg.id] = &object;
  const std::string name = fmt::format("P{}", names_.size());
  names_.emplace(jpeg.id, name);
  return name;
}

std::string Photographs::resources() const {
  std::string out;
  for (const auto& [id, name] : names_) {
    out += fmt::format("/{} {}", name, embedded_.at(id)->reference());
  }
  return out;
}

}  // namespace winchbook::pdf
