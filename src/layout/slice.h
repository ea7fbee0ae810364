#pragma once

#include <optional>
#include <string>
#include <vector>

#include "layout/frame.h"

namespace winchbook::layout {

/// Something for the margin, to stand level with the slice it comes with.
struct SideItem {
  Frame frame;
  Length drop;  ///< how far below the slice's top it wants to stand: words meet words, not tops
  bool warns = false;  ///< a caution: on the page of its slice, and never above its line
};

struct SliceColumn;

struct BookmarkAt {
  std::string words;
  int level = 0;
};

/// A piece of a block that no page boundary cuts: a line of reading text, a table row, a picture
/// with its caption. Items are relative to the frame's left edge, so that main begins at 162.
struct Slice {
  /// What it has to do with a sheet's fold across its middle.
  enum class Fold {
    none,
    above,  ///< stays above it; columns go on below
    here,   ///< nothing but the fold: what follows stands below
  };

  Frame frame;
  Fold fold = Fold::none;
  bool full = false;               ///< reaches into the margin: side items must be clear of it
  bool starts_block = false;       ///< stands on the grid
  bool keep_with_next = false;     ///< no page ends after it
  bool level_with_margin = false;  ///< moves down until its side items can stand level with it
  bool heading = false;            ///< three lines follow it on its page
  bool at_foot = false;            ///< stands at the foot of its page
  Length above;                    ///< space before it, except at a page's top
  Length shrinkable;               ///< by how much its picture may be made lower
  int head = -1;                   ///< index into `Slices::heads`: repeated when it begins a page
  std::vector<SideItem> beside = {};
  std::vector<std::string> anchors = {};
  std::optional<BookmarkAt> bookmark = {};
  std::vector<SliceColumn> columns;  ///< instead of items: columns side by side
};

/// What a chapter's blocks become: slices in reading order, and the table heads they repeat.
struct Slices {
  std::vector<Slice> slices;
  std::vector<Frame> heads = {};
  Length below;  ///< the space that the last block wants under it

  /// Starts a block: its first slice stands on the grid, as far under the block before it as the
  /// larger of their two wishes.
  void start_block(Length above);
  /// Adds a slice to the block that was started last.
  Slice& add(Slice slice);

 private:
  bool starting_ = false;
  Length above_;
};

/// One of several columns that stand side by side, each with what is left of it to place.
struct SliceColumn {
  Length left;  ///< of the column, in the frame
  Slices set;   ///< items relative to the column's own left edge
  std::size_t next = 0;
  std::optional<Length> goes_on_at = {};  ///< the left edge of a second column that it flows into
};

/// Lowers the slice's picture by `by` (at most `shrinkable`), keeping its shape.
void shrink_picture(Slice& slice, Length by);

/// The part of `frame` that fits into `height`, cut where it runs through no item; the rest stays
/// in `frame`. Nothing fits when even the first item is higher.
[[nodiscard]] std::optional<Frame> cut_off(Frame& frame, Length height);

/// An item's box; text by its size.
[[nodiscard]] Rect extent(const Item& item);

}  // namespace winchbook::layout
