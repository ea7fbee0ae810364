#pragma once

#include <string>
#include <string_view>

#include "picture/raster.h"

/// The decoders, one a kind of file. Each is given the whole file; errors are sentences that begin
/// with "the photograph": it is damaged, cut short, too large, moves, or is of a sort that has no
/// colours to print.
namespace winchbook::picture {

/// A kind of file by its first bytes, whatever its name says.
enum class Kind { jpeg, png, heic, avif, webp, tiff };

/// Errors: it is empty, or none of these ("is a video", "is a GIF").
[[nodiscard]] base::Result<Kind> kind_of(std::string_view bytes);
/// "jpg", "png", "heic", "avif", "webp", "tif".
[[nodiscard]] std::string_view ending_of(Kind kind);

[[nodiscard]] base::Result<Picture> read_jpeg(std::string_view bytes);
/// 8 and 16 bits, palettes, grey, alpha, interlaced; colours by iCCP, sRGB, or gAMA with cHRM.
[[nodiscard]] base::Result<Picture> read_png(std::string_view bytes);
/// HEIF with HEVC or AV1 inside. Turned already by its own boxes; Exif does not count for that
/// (ISO/IEC 23008-12).
[[nodiscard]] base::Result<Picture> read_heif(std::string_view bytes);
[[nodiscard]] base::Result<Picture> read_webp(std::string_view bytes);
/// The first picture of the file; more than 8 bits are cut to 8.
[[nodiscard]] base::Result<Picture> read_tiff(std::string_view bytes);

/// By its kind.
[[nodiscard]] base::Result<Picture> read(Kind kind, std::string_view bytes);

}  // namespace winchbook::picture
