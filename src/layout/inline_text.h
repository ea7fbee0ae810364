#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "layout/frame.h"
#include "layout/paragraph_breaker.h"

namespace winchbook::layout {

/// A stretch of one paragraph in one face, shaped, each glyph at its place along the endless line.
struct Span {
  std::uint32_t begin = 0;  ///< bytes of the paragraph's text
  std::uint32_t end = 0;
  text::FaceId face = 0;
  Length size;
  Length raise;  ///< how far above the line's baseline it stands
  Colour colour;
  int tracking = 0;
  bool small_capitals = false;
  int link = -1;  ///< index into `InlineText::links`
  TagId tag = kArtifact;
  std::vector<text::Glyph> glyphs;  ///< clusters count from `begin`
  std::vector<Length> places;       ///< left end of each glyph
  Length right;
};

/// A sign standing before the character at `offset`.
struct SignAt {
  std::uint32_t offset = 0;
  document::Sign sign = document::Sign::found;
  Length place;
  Colour colour;
  TagId tag = kArtifact;
};

struct InlineLink {
  std::string target;
  std::string words;
  TagId tag = kArtifact;
};

/// A paragraph as one endless line.
struct InlineText {
  std::string text;
  std::string language;
  std::vector<Span> spans;
  std::vector<SignAt> signs;
  std::vector<InlineLink> links;
  std::vector<std::uint32_t> marks;  ///< where note marks begin: no line ends before one
  Length right;                      ///< its whole width

  /// Where the character at `offset` begins, a sign before it included.
  [[nodiscard]] Length place_of(std::uint32_t offset) const;
};

/// What of a paragraph goes on in another manner: the first bytes in small capitals.
struct Lead {
  std::uint32_t small_capitals = 0;  ///< bytes of the first run
  TagId tag = kArtifact;             ///< their tag, when they have one
};

/// Appends `words` in a role to the endless line; links, marks and spoken signs get tags below
/// `tag`.
void append_words(InlineText& line, const document::Text& words, document::Role role, TagId tag,
                  const Setting& setting, const Lead& lead = {});

/// A paragraph's endless line at once.
[[nodiscard]] InlineText inline_text(const document::Text& words, document::Role role, TagId tag,
                                     const Setting& setting);

/// A place where a line of it may end.
struct InlineStop {
  std::uint32_t end = 0;   ///< bytes: after the last thing seen
  std::uint32_t next = 0;  ///< bytes: the following line's first
  bool hyphen = false;
};

struct InlineStops {
  std::vector<InlineStop> places;
  std::vector<Stop> measures;  ///< one for each place
};

/// Every place where a line may end. A stretch wider than `narrowest` may end after each
/// character.
[[nodiscard]] InlineStops stops_of(const InlineText& line, Length narrowest,
                                   const Setting& setting);

}  // namespace winchbook::layout
