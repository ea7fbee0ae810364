
#include "layout/frame.h"
#include "layout/shapes.h"

namespace winchbook::layout {
namespace {

using base::points;
using document::Sign;

constexpr Length kSquare = points(6);
constexpr Length kRing = points(7.2);  // 6.2 between the middles of a stroke 1 thick
constexpr Length kTickBox = points(7.5);
constexpr Length kThin = points(0.8);

/// Capitals of the small type are 5.6 high: round signs share their middle.
constexpr Length kMiddle = points(2.8);

Point middle_of_ring(Point baseline) {
  return {baseline.x + kRing / 2, baseline.y - kMiddle};
}

Rect square_on(Point baseline) {
  return {baseline.x, baseline.y - kSquare, kSquare, kSquare};
}

/// Twelve dashes 1 long and 1 apart, so that each corner is a corner.
std::vector<Item> dotted_square(Rect box, Colour colour, TagId tag) {
  const Length dot = points(1);
  const Length far = kSquare - kThin;
  std::vector<Item> items;
  const auto add = [&](Length x, Length y, Length width, Length height) {
    items.emplace_back(filled_box({box.x + x, box.y + y, width, height}, colour, tag));
  };
  for (const Length edge : {points(0), far}) {
    add(points(0), edge, points(1.2), kThin);
    add(points(2.5), edge, dot, kThin);
    add(kSquare - points(1.2), edge, points(1.2), kThin);
    add(edge, points(2.5), kThin, dot);
    for (const Length corner : {kThin, kSquare - points(1.2)})
      add(edge, corner, kThin, points(0.4));
  }
  return items;
}

}  // namespace

std::vector<Item> draw_sign(Sign sign, Point baseline, Colour colour, TagId tag) {
  const Rect box = square_on(baseline);
  const Stroke outline{kThin, colour};
  switch (sign) {
    case Sign::found:
      return {ring(middle_of_ring(baseline), kRing / 2, {points(1), colour}, {}, tag)};
    case Sign::left:
      return {disc(middle_of_ring(baseline), kRing / 2, colour, tag)};
    case Sign::original:
      return {filled_box(box, colour, tag)};
    case Sign::same_maker: {
      const std::vector<Point> lower_left = {
          {box.x, box.y}, {box.x + box.width, baseline.y}, {box.x, baseline.y}};
      return {filled_polygon(lower_left, colour, tag), outlined_box(box, outline, tag)};
    }
    case Sign::other:
      return {outlined_box(box, outline, tag)};
    case Sign::missing:
      return dotted_square(box, colour, tag);
    case Sign::undetermined: {
      const Hatch hatch{points(0.7), points(1.5), colour};
      return {hatched_box(box, hatch, tag), outlined_box(box, outline, tag)};
    }
    case Sign::tick_box: {
      const Rect empty{baseline.x, baseline.y - kMiddle - kTickBox / 2, kTickBox, kTickBox};
      return {outlined_box(empty, outline, tag)};
    }
  }
  return {};
}

Length sign_advance(Sign sign) {
  switch (sign) {
    case Sign::found:
    case Sign::left:
      return points(11);
    case Sign::tick_box:
      return points(12);
    default:
      return points(9.25);
  }
}

}  // namespace winchbook::layout
