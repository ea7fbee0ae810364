#pragma once

#include "document/document.h"
#include "layout/frame.h"

namespace winchbook::layout {

/// The cover in a frame of `Style::frame_width` by `height`: picture (or the marks as read), name,
/// stand-first, foot rules. A long name takes the next smaller size after three lines, and shrinks
/// the picture line by line, to 300 points at least. A compact cover ends under its last line, at
/// whatever height that is, and the chapters follow; only when nothing of a name is left to shrink
/// is a frame higher than `height`. Adds its figure, heading and paragraphs under `parent`.
[[nodiscard]] Frame set_cover(const document::Cover& cover, Length height, TagId parent,
                              const Setting& setting);

}  // namespace winchbook::layout
