#pragma once

#include <optional>
#include <string_view>

#include "base/edtf_date.h"

namespace winchbook::photo {

/// The few things of Exif data that matter here.
struct ExifFacts {
  int orientation = 1;  ///< 1 to 8; 1 when it is not told or makes no sense
  bool has_gps = false;
  /// The day of DateTimeOriginal (0x9003), by the camera's clock; nothing for one that was never
  /// set ("0000:00:00") or is no day.
  std::optional<base::Day> taken;
  /// DCF's option file: interoperability index "R03", colours told in Adobe RGB without a profile.
  bool adobe_rgb = false;
};

/// Reads Exif data (a TIFF header and its directories; CIPA DC-008, TIFF 6.0). Data that makes
/// no sense tells nothing.
[[nodiscard]] ExifFacts read_exif(std::string_view tiff);

}  // namespace winchbook::photo
