#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "base/enum_words.h"

namespace winchbook::document {

/// The small drawn signs that stand in running text, each with the same meaning everywhere.
enum class Sign {
  found,         ///< ring: as found
  left,          ///< disc: as left
  original,      ///< filled square: the maker's, of this reel
  same_maker,    ///< lower left half filled: the maker's, of another reel
  other,         ///< open square: another maker's, a reproduction, the bench's
  missing,       ///< dotted outline
  undetermined,  ///< hatched
  tick_box,      ///< an empty box to tick with a pencil
};

/// The names of signs in dumps.
[[nodiscard]] constexpr auto enum_words(Sign /*list*/) {
  return std::to_array<base::EnumWord<Sign>>({
      {Sign::found, "found"},
      {Sign::left, "left"},
      {Sign::original, "original"},
      {Sign::same_maker, "same maker"},
      {Sign::other, "other"},
      {Sign::missing, "missing"},
      {Sign::undetermined, "undetermined"},
      {Sign::tick_box, "tick box"},
  });
}

/// A stretch of text set in one manner. `link` is "#anchor" inside the document, or a URI.
struct Run {
  std::string text;
  bool italic = false;
  bool bold = false;
  bool small_capitals = false;
  std::string link = {};
};

/// A sign and the words a reader who cannot see it hears; empty when a word beside it says the
/// same.
struct SignRun {
  Sign sign = Sign::found;
  std::string spoken = {};
};

/// A raised reference to a note of the same chapter ("³").
struct NoteMark {
  int number = 0;
};

/// Starts a new line inside the paragraph.
struct LineEnd {};

using Inline = std::variant<Run, SignRun, NoteMark, LineEnd>;

/// One paragraph's worth of text. `language` is a BCP 47 tag when it is not the document's.
struct Text {
  std::vector<Inline> parts;
  std::string language = {};

  [[nodiscard]] bool empty() const { return parts.empty(); }
};

/// Plain text in the manner of its surroundings.
[[nodiscard]] Text plain(std::string words);
/// Words that hold line feeds, each line on a line of its own.
[[nodiscard]] Text in_lines(std::string_view words);
/// Puts the parts of `more` after those of `text`.
void append(Text& text, Text more);
/// `lead` in bold, a space, then `words`: the form of a side note.
[[nodiscard]] Text with_lead(std::string lead, std::string words);
/// The words alone: what a reader hears. Signs give their spoken words, note marks their number.
[[nodiscard]] std::string spoken(const Text& text);

}  // namespace winchbook::document
