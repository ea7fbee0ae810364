#pragma once

#include <optional>
#include <vector>

#include "layout/page.h"

/// The few shapes that pages are drawn with. Those named by a box stay inside it, strokes included.
namespace winchbook::layout {

[[nodiscard]] PathItem drawn_line(Point from, Point to, const Stroke& stroke, TagId tag);
[[nodiscard]] PathItem filled_box(Rect box, Colour colour, TagId tag);
[[nodiscard]] PathItem outlined_box(Rect box, const Stroke& stroke, TagId tag);
[[nodiscard]] PathItem filled_polygon(const std::vector<Point>& corners, Colour colour, TagId tag);

[[nodiscard]] PathItem disc(Point centre, Length radius, Colour colour, TagId tag);
/// `radius` runs to the outside of the stroke; `ground` covers what lies behind.
[[nodiscard]] PathItem ring(Point centre, Length radius, const Stroke& stroke,
                            std::optional<Colour> ground, TagId tag);

/// Stripes `width` thick at `pitch`, both measured across the stripe, rising at 45° to the right.
/// Each stripe is a filled shape cut off exactly at the box's edges.
struct Hatch {
  Length width;
  Length pitch;
  Colour colour;
};
[[nodiscard]] PathItem hatched_box(Rect box, const Hatch& hatch, TagId tag);

}  // namespace winchbook::layout
