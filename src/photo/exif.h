#pragma once

#include <string_view>

namespace winchbook::photo {

/// The two things of Exif data that matter here.
struct ExifFacts {
  int orientation = 1;  ///< 1 to 8; 1 when it is not told or makes no sense
  bool has_gps = false;
};

/// Reads Exif data (a TIFF header and its first directory; CIPA DC-008, TIFF 6.0). Data that makes
/// no sense tells nothing.
[[nodiscard]] ExifFacts read_exif(std::string_view tiff);

}  // namespace winchbook::photo
