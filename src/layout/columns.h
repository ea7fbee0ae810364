#pragma once

#include "layout/slice.h"

namespace winchbook::layout {

/// What of the columns one page takes.
struct TakenColumns {
  struct At {
    Length y;
    std::vector<std::string> anchors;
    std::optional<BookmarkAt> bookmark;
  };
  Frame frame;
  std::vector<At> places;  ///< left column first
};

/// How high the columns are when nothing parts them.
[[nodiscard]] Length height_of(const std::vector<SliceColumn>& columns);

/// Whether everything is placed.
[[nodiscard]] bool all_taken(const std::vector<SliceColumn>& columns);

/// The part of each column that fits into `room`, taken off it; headings stay with what follows
/// them, and a table carried over repeats its head. Nothing when nothing fits, unless something
/// `must`: then the first piece of each column is taken, cut if it can be, however high it is.
[[nodiscard]] std::optional<TakenColumns> take_columns(std::vector<SliceColumn>& columns,
                                                       Length room, bool must);

}  // namespace winchbook::layout
