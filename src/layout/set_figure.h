#pragma once

#include "layout/slice.h"

namespace winchbook::layout {

/// The box a photograph fills at a width: 471 × 300, 309 × 210 or 147 × 210 at most, the whole
/// picture; with fewer than 150 pixels an inch the next smaller of these, with fewer than 75 the
/// smallest.
[[nodiscard]] Rect figure_box(const document::Photograph& photograph, document::Width width,
                              const document::Style& style);

/// Picture and caption under it, at the frame's left edge. Adds figure and caption under `parent`.
[[nodiscard]] Frame set_figure(const document::Figure& figure, TagId parent,
                               const Setting& setting);

/// A figure of the text, in main or over the whole frame, its caption under it or in the margin.
void add_figure(const document::Figure& figure, TagId parent, const Setting& setting,
                Slices& slices);
/// Rows of two or three figures; more than three go on in further rows.
void add_figure_row(const document::FigureRow& row, TagId parent, const Setting& setting,
                    Slices& slices);
/// As found and as left, side by side at equal height.
void add_pair(const document::Pair& pair, TagId parent, const Setting& setting, Slices& slices);

}  // namespace winchbook::layout
