#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace winchbook::photo {

/// What a JPEG carries besides its one picture, in words: "a comment", "application segment 1
/// (Exif, XMP)", "2041 bytes behind its end". A picture alone has a JFIF header without a
/// thumbnail, a colour profile (ICC.1, B.4) and the Adobe segment that tells how its colours are
/// stored, and ends at its end of image (ITU-T T.81, B.1.1.3 and B.2). Of bytes that are no JPEG:
/// nothing.
[[nodiscard]] std::vector<std::string> besides_the_picture(std::string_view jpeg);

/// The picture alone: the same bytes without what besides_the_picture tells, so that it looks the
/// same to the last pixel. Its Exif orientation goes with the rest. Empty of bytes that are cut
/// short or no JPEG.
[[nodiscard]] std::string bare_picture(std::string_view jpeg);

}  // namespace winchbook::photo
