#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <variant>
#include <vector>

#include "base/length.h"
#include "document/style.h"
#include "text/shape.h"

/// Finished pages: every position fixed, every item knowing the structure element it belongs to.
namespace winchbook::layout {

using base::Length;
using base::Point;
using base::Rect;
using document::Colour;

/// Index into `Pages::tags`; `kArtifact` marks furniture that a reader aloud skips.
using TagId = std::int32_t;
inline constexpr TagId kArtifact = -1;

/// Standard structure types of ISO 32000-1, 14.8.4, as far as the pages use them.
enum class TagType {
  document,
  part,
  section,
  h1,
  h2,
  h3,
  paragraph,
  caption,
  figure,
  note,
  reference,
  link,
  span,
  table,
  table_head,
  table_body,
  row,
  header_cell,
  cell,
  list,
  list_item,
  label,
  list_body,
};

/// One structure element. Children stand in reading order: that in which they were made.
struct Tag {
  TagType type = TagType::paragraph;
  TagId parent = kArtifact;  ///< kArtifact: child of the root
  std::string alternative = {};
  std::string actual_text = {};
  std::string language = {};
  std::string id = {};  ///< notes carry a unique one
  std::string title = {};
  int column_span = 1;
  bool row_scope = false;  ///< a header cell naming its row, not its column
  bool numbered = false;   ///< a list with numbers
  bool caution = false;    ///< a note that warns
  int page = -1;           ///< figures: the page and
  Rect box = {};           ///< the box they fill
};

struct TextItem {
  Point origin;  ///< left end of the baseline
  text::FaceId face = 0;
  Length size;
  Colour colour;
  int tracking = 0;  ///< thousandths of an em after each glyph
  std::vector<text::Glyph> glyphs;
  std::string text;  ///< what the glyphs stand for; clusters point into it
  std::string actual_text =
      {};  ///< when what is read differs from the glyphs' text (small capitals, initials)
  TagId tag = kArtifact;
};

struct Stroke {
  Length width;
  Colour colour;
  std::vector<Length> dashes = {};
  bool round_caps = false;
};

/// A path of straight lines and Bézier curves, filled, stroked, or both.
struct PathItem {
  struct Step {
    enum class Kind { move, line, curve, close };
    Kind kind = Kind::move;
    Point to = {};
    Point control1 = {};
    Point control2 = {};
  };
  std::vector<Step> steps;
  bool filled = false;
  Colour fill = {};
  bool stroked = false;
  Stroke stroke = {};
  TagId tag = kArtifact;
};

struct ImageItem {
  std::string photograph;  ///< the record's id
  Rect box;
  TagId tag = kArtifact;
};

/// A place to click: `target` is "#anchor" or a URI, `words` what a reader aloud says.
struct LinkItem {
  Rect box;
  std::string target;
  std::string words;
  TagId tag = kArtifact;
};

using Item = std::variant<TextItem, PathItem, ImageItem, LinkItem>;

struct Page {
  Length width;
  Length height;
  std::vector<Item> items;
};

struct Anchor {
  int page = 0;
  Length y;
};

struct Bookmark {
  std::string words;
  Anchor to;
  int level = 0;
};

struct Pages {
  std::vector<Page> pages;
  std::vector<Tag> tags;
  std::map<std::string, Anchor> anchors;
  std::vector<Bookmark> bookmarks;
};

}  // namespace winchbook::layout
