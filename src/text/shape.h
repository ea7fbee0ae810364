#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

/// Faces and shaping: which glyphs, how wide, and where a line may break.
namespace winchbook::text {

/// Index of a face in the fonts list of one run of the program.
using FaceId = std::uint16_t;

/// One glyph of a shaped run. All measures in the face's own units (see
/// `FaceMetrics::units_per_em`).
struct Glyph {
  std::uint32_t id = 0;
  std::int32_t advance = 0;
  std::int32_t x_offset = 0;
  std::int32_t y_offset = 0;
  std::uint32_t cluster =
      0;  ///< byte offset into the run's text of the first character it stands for
  friend bool operator==(const Glyph&, const Glyph&) = default;
};

/// A stretch of text in one face, shaped: kerning and ligatures done, in visual order left to
/// right.
struct Shaped {
  FaceId face = 0;
  std::string text;  ///< UTF-8
  std::vector<Glyph> glyphs;
  std::int64_t width = 0;  ///< sum of advances, in the face's units
};

struct FaceMetrics {
  int units_per_em = 1000;
  int ascender = 0;
  int descender = 0;  ///< negative
  int cap_height = 0;
  int x_height = 0;
};

/// What layout asks of fonts; tests answer with a made-up face of fixed width.
class FontMetrics {
 public:
  virtual ~FontMetrics() = default;

  /// The face called `name` in the fonts list; throws std::out_of_range for a name that is not in
  /// it (the template reader has checked every name before).
  [[nodiscard]] virtual FaceId face(std::string_view name) const = 0;
  /// `features` are OpenType tags switched on for the whole text.
  [[nodiscard]] virtual Shaped shape(FaceId face, std::string_view utf8,
                                     std::span<const std::string> features,
                                     std::string_view language) const = 0;
  [[nodiscard]] virtual FaceMetrics metrics(FaceId face) const = 0;
  [[nodiscard]] virtual bool has(FaceId face, char32_t character) const = 0;
};

/// A place where a line may or must end: the byte offset just after the last character of the line.
struct BreakOpportunity {
  std::uint32_t offset = 0;
  bool mandatory = false;
  bool hyphen = false;  ///< a hyphen has to be set when the line ends here
};

/// All line break opportunities of a paragraph by UAX #14 as ICU has it for `language`; the last
/// one is the end of the text and neither mandatory nor hyphenated. Soft hyphens (U+00AD) give
/// opportunities with `hyphen`. `language` is a BCP 47 tag.
[[nodiscard]] std::vector<BreakOpportunity> line_breaks(std::string_view utf8,
                                                        std::string_view language);

/// Byte offsets after each user-perceived character: where a word wider than its column may be cut.
[[nodiscard]] std::vector<std::uint32_t> character_ends(std::string_view utf8,
                                                        std::string_view language);

/// Upper case by the rules of `language`.
[[nodiscard]] std::string upper_case(std::string_view utf8, std::string_view language);

}  // namespace winchbook::text
