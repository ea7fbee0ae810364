#pragma once

#include <string>
#include <string_view>

namespace winchbook::photo {

/// What a JPEG says besides its picture: the contents of its application segments 1 and 13 (Exif,
/// XMP, IPTC) and of its comments (ITU-T T.81, B.2.4.5 and B.2.4.6) up to the first scan, one
/// behind the other, zero bytes left out so that words of two-byte letters read as words. Bytes
/// that are no JPEG say nothing.
[[nodiscard]] std::string remarks_in(std::string_view jpeg);

}  // namespace winchbook::photo
