#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "document/document.h"
#include "document/style.h"
#include "layout/page.h"
#include "text/shape.h"

namespace winchbook::layout {

/// A finished piece of a page: items at fixed places relative to its own top left corner.
struct Frame {
  Length width;
  Length height;
  std::vector<Item> items;
};

/// Copies the items of `frame` into `out`, moved by `offset`.
void place(const Frame& frame, Point offset, std::vector<Item>& out);

/// What a run asks beyond its role. Italic inside italic stands upright.
struct Manner {
  bool italic = false;
  bool bold = false;
  bool small_capitals = false;
};

/// What every block setter works with: the look, the fonts, and the growing structure tree.
struct Setting {
  const document::Style& style;
  const text::FontMetrics& fonts;
  std::string language;
  std::vector<Tag>& tags;
  std::string chapter = {};  ///< its id, before which its notes are anchored

  /// Adds a structure element under `parent` and returns its id.
  [[nodiscard]] TagId add_tag(Tag tag) const;
  /// The face of a role in a manner.
  [[nodiscard]] text::FaceId face(document::Role role, Manner manner = {}) const;
  /// One line of text in a role's type and a manner, shaped with the role's features, in one face:
  /// for words whose every character is known to be in it. `set_words` looks for other faces.
  [[nodiscard]] TextItem line(document::Role role, std::string_view words, Point baseline,
                              TagId tag, Manner manner = {}) const;
  /// Width of such a line.
  [[nodiscard]] Length width(document::Role role, std::string_view words, Manner manner = {}) const;
};

/// How far a set line reaches to the right of its origin.
[[nodiscard]] Length width_of(const TextItem& item, const text::FontMetrics& fonts);
/// The same without the spaces at its end, which a broken line keeps for those who copy the text.
[[nodiscard]] Length seen_width_of(const TextItem& item, const text::FontMetrics& fonts);

/// Where the first baseline stands below the top of a role's line, half the leading above and half
/// below the face: 10.3 of 15 for reading text, 8.8 of 11.25 for side notes.
[[nodiscard]] Length first_baseline(document::Role role, const Setting& setting);

/// A paragraph in a role's type, broken ragged right into `width`, the role's leading apart; every
/// item carries `tag`, links and notes their own tags below it. As high as its lines.
[[nodiscard]] Frame set_words(const document::Text& text, document::Role role, Length width,
                              TagId tag, const Setting& setting);

/// A chart drawn as one figure; every item carries `figure`. Labels stand in 0–156, the plot from
/// 162 when the chart is 471 wide. A narrower chart scales the plot and never the type, so that its
/// words are read at the same size everywhere.
[[nodiscard]] Frame set_chart(const document::Chart& chart, Length width, TagId figure,
                              const Setting& setting);

/// A sign of running text, 6 to 7.5 points, its left edge at x and standing on `baseline`.
[[nodiscard]] std::vector<Item> draw_sign(document::Sign sign, Point baseline, Colour colour,
                                          TagId tag);
/// How far a sign pushes the text after it, its own gap included: no space is written after a sign.
[[nodiscard]] Length sign_advance(document::Sign sign);

}  // namespace winchbook::layout
