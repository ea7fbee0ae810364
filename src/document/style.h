#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "base/length.h"

/// How a document looks: a value that a template fills, and that layout obeys.
namespace winchbook::document {

struct Colour {
  std::uint8_t red = 0;
  std::uint8_t green = 0;
  std::uint8_t blue = 0;
  friend bool operator==(const Colour&, const Colour&) = default;
};

enum class Role {
  cover_name,
  cover_name_2,  ///< a long name's second size
  cover_name_3,  ///< and its last
  chapter_title,
  chapter_title_2,
  chapter_title_3,
  second_ledger_title,
  stand_first,
  reading,
  small_reading,
  subhead,
  eyebrow,
  side_note,
  table,
  label,
  caption,
  chart,
  folio,
  initial,
  entry_letter,
  entry_name,
  seal_code,
  marks_as_read,
  note_mark,
  tally,        ///< the figures of a statement
  card_number,  ///< so large that it can be read off a photograph
};
inline constexpr std::size_t kRoles = static_cast<std::size_t>(Role::card_number) + 1;

/// The four faces of one family; names are those of the fonts list. An empty name means "the
/// regular one".
struct Family {
  std::string regular;
  std::string italic = {};
  std::string bold = {};
  std::string bold_italic = {};
};

struct TypeStyle {
  Family family;
  bool italic = false;
  bool bold = false;
  base::Length size;
  base::Length leading;
  Colour colour;
  int tracking = 0;  ///< thousandths of an em added after each glyph
  bool capitals = false;
  std::vector<std::string> features = {};  ///< OpenType tags: "onum", "lnum", "tnum"
};

struct Paper {
  base::Length width;
  base::Length height;
  base::Length top;
  base::Length foot;
  base::Length left;
  base::Length right;
};

struct Style {
  Paper paper;
  base::Length gutter = base::points(15);
  base::Length side = base::points(147);
  base::Length main = base::points(309);
  base::Length line = base::points(15);
  std::array<TypeStyle, kRoles> type;
  Colour ink;
  Colour ink2;
  Colour bar;
  Colour accent;
  Colour tint;
  std::vector<std::string> fallback =
      {};  ///< faces asked, in order, for a character the first lacks

  [[nodiscard]] const TypeStyle& of(Role role) const {
    return type[static_cast<std::size_t>(role)];
  }
  [[nodiscard]] base::Length frame_width() const { return side + gutter + main; }
};

}  // namespace winchbook::document
