#pragma once

#include <algorithm>
#include <array>
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>

#include "document/style.h"
#include "text/shape.h"

/// A made-up font in which positions can be told by counting: every character of every face is half
/// an em wide, 0.8 em reach above the baseline and 0.2 below.
namespace winchbook::fake {

class Font : public text::FontMetrics {
 public:
  static constexpr int kAdvance = 500;

  /// Faces are numbered in the order of this list; any other name is unknown.
  static constexpr std::array<std::string_view, 8> kFaces = {
      "text", "text-italic", "text-bold", "text-bold-italic",
      "sans", "sans-italic", "sans-bold", "sans-bold-italic"};

  [[nodiscard]] text::FaceId face(std::string_view name) const override {
    const auto* found = std::find(kFaces.begin(), kFaces.end(), name);
    if (found == kFaces.end()) throw std::out_of_range(std::string(name));
    return static_cast<text::FaceId>(found - kFaces.begin());
  }

  [[nodiscard]] text::Shaped shape(text::FaceId face, std::string_view utf8,
                                   std::span<const std::string> /*features*/,
                                   std::string_view /*language*/) const override {
    text::Shaped shaped{face, std::string(utf8), {}, 0};
    for (std::uint32_t i = 0; i < utf8.size(); ++i) {
      const auto byte = static_cast<unsigned char>(utf8[i]);
      if ((byte & 0xC0U) == 0x80U) continue;  // inside a character
      shaped.glyphs.push_back({.id = byte, .advance = kAdvance, .cluster = i});
      shaped.width += kAdvance;
    }
    return shaped;
  }

  [[nodiscard]] text::FaceMetrics metrics(text::FaceId /*face*/) const override {
    return {.units_per_em = 1000,
            .ascender = 800,
            .descender = -200,
            .cap_height = 700,
            .x_height = 500};
  }

  /// Everything but the private use area.
  [[nodiscard]] bool has(text::FaceId /*face*/, char32_t character) const override {
    return character < 0xE000 || character > 0xF8FF;
  }
};

/// Pages in the made-up font: A4, columns of 147 and 309.
inline document::Style style() {
  using base::points;
  using document::Role;
  constexpr document::Colour ink{0x1A, 0x1A, 0x1A};
  constexpr document::Colour ink2{0x33, 0x33, 0x33};
  constexpr document::Colour accent{0x7B, 0x2D, 0x22};
  document::Style style;
  style.paper = {points(595.28), points(841.89), points(84),
                 points(97.89),  points(62),     points(62.28)};
  style.ink = ink;
  style.ink2 = ink2;
  style.bar = {0x5A, 0x5A, 0x5A};
  style.accent = accent;
  style.tint = {0xEC, 0xE8, 0xE0};
  const document::Family text{"text", "text-italic", "text-bold", "text-bold-italic"};
  const document::Family sans{"sans", "sans-italic", "sans-bold", "sans-bold-italic"};
  const auto set = [&](Role role, const document::Family& family, double size, double leading) {
    document::TypeStyle& type = style.type[static_cast<std::size_t>(role)];
    type.family = family;
    type.size = points(size);
    type.leading = points(leading);
    type.colour = ink;
    return &type;
  };
  set(Role::cover_name, text, 44, 45)->tracking = -10;
  set(Role::cover_name_2, text, 34, 37.5);
  set(Role::cover_name_3, text, 26, 30);
  set(Role::chapter_title, text, 25, 30);
  set(Role::chapter_title_2, text, 20, 26.25);
  set(Role::chapter_title_3, text, 16, 22.5);
  set(Role::second_ledger_title, text, 25, 30)->italic = true;
  set(Role::stand_first, text, 13, 18.75)->italic = true;
  set(Role::reading, text, 11, 15);
  set(Role::small_reading, text, 9.5, 12.5);
  set(Role::subhead, text, 11, 15)->bold = true;
  document::TypeStyle* eyebrow = set(Role::eyebrow, sans, 7.5, 11.25);
  eyebrow->bold = true;
  eyebrow->tracking = 90;
  eyebrow->colour = accent;
  set(Role::side_note, sans, 8.25, 11.25);
  set(Role::table, sans, 8.25, 11.25);
  set(Role::label, sans, 7.5, 11.25)->bold = true;
  set(Role::caption, sans, 7.75, 11.25)->colour = ink2;
  set(Role::chart, sans, 7.75, 11.25);
  set(Role::folio, sans, 7.5, 11.25);
  set(Role::initial, text, 59, 45)->colour = accent;
  set(Role::entry_letter, text, 22, 22.5);
  set(Role::entry_name, text, 11, 15)->bold = true;
  document::TypeStyle* code = set(Role::seal_code, text, 25, 30);
  code->tracking = 30;
  document::TypeStyle* marks = set(Role::marks_as_read, text, 20, 45);
  marks->tracking = 30;
  set(Role::note_mark, sans, 7, 11.25);
  set(Role::tally, sans, 13, 17.5);
  set(Role::card_number, text, 96, 78.75);
  return style;
}

}  // namespace winchbook::fake
