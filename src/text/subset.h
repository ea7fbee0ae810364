#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

struct hb_face_t;
struct hb_font_t;

namespace winchbook::text {

/// What a font descriptor says of a face. Measures in the face's own units.
struct FaceFacts {
  std::string postscript_name;
  int glyphs = 0;  ///< how many the face has
  int x_min = 0;   ///< the box around all of them
  int y_min = 0;
  int x_max = 0;
  int y_max = 0;
  double slant = 0;  ///< degrees, negative when leaning right
  int weight = 400;  ///< 100 to 900
};

/// A face cut down to some of its glyphs.
struct Subset {
  std::string file;                   ///< a TrueType font with outlines and widths only
  std::vector<std::uint16_t> glyphs;  ///< each glyph asked for, as the file numbers it
};

/// Reads the facts from the face's own tables.
[[nodiscard]] FaceFacts facts_of(hb_face_t* face, hb_font_t* font);

/// Keeps the glyphs and, however deep, all parts they are composed of. Empty when the face's tables
/// are broken.
[[nodiscard]] std::optional<Subset> cut(hb_face_t* face, std::span<const std::uint32_t> glyphs);

}  // namespace winchbook::text
