#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "picture/raster.h"

namespace winchbook::picture {

/// A baseline JPEG (ITU-T T.81) with a JFIF head and nothing else said: quality 90, colour at half
/// the resolution each way, Huffman tables of its own. The raster is grey or rgb, 8 bits.
[[nodiscard]] base::Result<std::string> write_jpeg(const Raster& raster);

/// The same picture, its coefficients untouched, as such a JPEG: no sample changes, and nothing is
/// said besides. Error when the file is cut short or damaged.
[[nodiscard]] base::Result<std::string> without_remarks(std::string_view jpeg);

/// True when a JPEG is one baseline frame in one scan and says nothing besides: no Exif, no
/// profile, no comment, no small picture in its head, nothing behind its end marker.
[[nodiscard]] bool is_bare(std::string_view jpeg);

}  // namespace winchbook::picture
