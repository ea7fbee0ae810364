#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "pdf/haru.h"
#include "text/font_book.h"

namespace winchbook::pdf {

/// One face in one file: a Type0 font that holds only what was used of it.
///
/// A character code stands for a pair of a glyph and the text it was set for, so that a glyph that
/// serves several texts (space and no-break space, capital and small capital) still reads aloud and
/// copies as what was written. Codes count from 1 in the order of use; a CIDToGIDMap leads to the
/// glyphs of the subset.
class EmbeddedFont {
 public:
  /// `name` is the resource name in content streams ("F0").
  EmbeddedFont(const text::FontBook& book, text::FaceId face, std::string name, Haru& haru);

  [[nodiscard]] const std::string& name() const { return name_; }
  [[nodiscard]] const Object& object() const { return *type0_; }
  /// How a glyph is shown.
  struct Shown {
    std::uint16_t code = 0;
    std::int64_t width = 0;  ///< as the file will state it, in thousandths of 1/1000 em
  };
  /// The code for `glyph` set for `text` (UTF-8). Throws std::length_error beyond 65,535 codes.
  [[nodiscard]] Shown show(std::uint32_t glyph, std::string_view text);
  [[nodiscard]] int units_per_em() const { return metrics_.units_per_em; }
  /// Cuts the subset and writes the font. Error: the face cannot be subset.
  [[nodiscard]] base::Diagnostics embed();

 private:
  struct Code {
    std::uint32_t glyph = 0;
    std::string text;
    std::int64_t width = 0;
    std::uint16_t next = 0;  ///< another code of the same glyph
  };
  [[nodiscard]] Object& descriptor(const std::string& base_font, const Object& file);
  [[nodiscard]] std::string widths() const;
  [[nodiscard]] std::string unicode_map() const;

  const text::FontBook& book_;
  text::FaceId face_;
  text::FaceMetrics metrics_;
  text::FaceFacts facts_;
  std::string name_;
  Haru& haru_;
  Object* type0_;
  std::vector<Code> codes_;
  std::vector<std::uint16_t> first_;  ///< by glyph, its first code
};

}  // namespace winchbook::pdf
