#include "layout/shapes.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace winchbook::layout {
namespace {

using Step = PathItem::Step;

std::vector<Step> outline_of(const std::vector<Point>& corners) {
  std::vector<Step> steps;
  for (std::size_t i = 0; i < corners.size(); ++i) {
    steps.push_back({.kind = i == 0 ? Step::Kind::move : Step::Kind::line, .to = corners[i]});
  }
  steps.push_back({.kind = Step::Kind::close});
  return steps;
}

std::vector<Point> corners_of(Rect box) {
  const Length right = box.x + box.width;
  const Length foot = box.y + box.height;
  return {{box.x, box.y}, {right, box.y}, {right, foot}, {box.x, foot}};
}

std::vector<Step> circle(Point centre, Length radius) {
  // Four Bézier quarters; this reach keeps them within 0.03 % of the circle.
  constexpr double kReach = 0.5522847498;
  const Length r = radius;
  const Length k = base::points(base::to_points(radius) * kReach);
  const auto [x, y] = centre;
  const auto quarter = [](Point control1, Point control2, Point to) {
    return Step{Step::Kind::curve, to, control1, control2};
  };
  return {{.kind = Step::Kind::move, .to = {x + r, y}},
          quarter({x + r, y + k}, {x + k, y + r}, {x, y + r}),
          quarter({x - k, y + r}, {x - r, y + k}, {x - r, y}),
          quarter({x - r, y - k}, {x - k, y - r}, {x, y - r}),
          quarter({x + k, y - r}, {x + r, y - k}, {x + r, y}),
          {.kind = Step::Kind::close}};
}

struct Spot {
  double x = 0;
  double y = 0;
  [[nodiscard]] double sum() const { return x + y; }
};

/// What of a convex polygon lies where `sign · (x + y) <= sign · limit`.
std::vector<Spot> cut(const std::vector<Spot>& polygon, double limit, double sign) {
  std::vector<Spot> kept;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Spot& here = polygon[i];
    const Spot& next = polygon[(i + 1) % polygon.size()];
    const double a = sign * (here.sum() - limit);
    const double b = sign * (next.sum() - limit);
    if (a <= 0) kept.push_back(here);
    if ((a < 0 && b > 0) || (a > 0 && b < 0)) {
      const double t = a / (a - b);
      kept.push_back({here.x + t * (next.x - here.x), here.y + t * (next.y - here.y)});
    }
  }
  return kept;
}

Point rounded_into(const Spot& spot, Rect box) {
  return {std::clamp(base::points(spot.x), box.x, box.x + box.width),
          std::clamp(base::points(spot.y), box.y, box.y + box.height)};
}

}  // namespace

PathItem drawn_line(Point from, Point to, const Stroke& stroke, TagId tag) {
  PathItem path;
  path.steps = {{.kind = Step::Kind::move, .to = from}, {.kind = Step::Kind::line, .to = to}};
  path.stroked = true;
  path.stroke = stroke;
  path.tag = tag;
  return path;
}

PathItem filled_polygon(const std::vector<Point>& corners, Colour colour, TagId tag) {
  PathItem path;
  path.steps = outline_of(corners);
  path.filled = true;
  path.fill = colour;
  path.tag = tag;
  return path;
}

PathItem filled_box(Rect box, Colour colour, TagId tag) {
  return filled_polygon(corners_of(box), colour, tag);
}

PathItem outlined_box(Rect box, const Stroke& stroke, TagId tag) {
  const Length half = stroke.width / 2;
  PathItem path;
  path.steps = outline_of(
      corners_of({box.x + half, box.y + half, box.width - half * 2, box.height - half * 2}));
  path.stroked = true;
  path.stroke = stroke;
  path.tag = tag;
  return path;
}

PathItem disc(Point centre, Length radius, Colour colour, TagId tag) {
  PathItem path;
  path.steps = circle(centre, radius);
  path.filled = true;
  path.fill = colour;
  path.tag = tag;
  return path;
}

PathItem ring(Point centre, Length radius, const Stroke& stroke, std::optional<Colour> ground,
              TagId tag) {
  PathItem path;
  path.steps = circle(centre, radius - stroke.width / 2);
  path.filled = ground.has_value();
  path.fill = ground.value_or(Colour{});
  path.stroked = true;
  path.stroke = stroke;
  path.tag = tag;
  return path;
}

PathItem hatched_box(Rect box, const Hatch& hatch, TagId tag) {
  PathItem path;
  path.filled = true;
  path.fill = hatch.colour;
  path.tag = tag;
  const double left = base::to_points(box.x);
  const double top = base::to_points(box.y);
  const double right = base::to_points(box.x + box.width);
  const double foot = base::to_points(box.y + box.height);
  const std::vector<Spot> corners = {{left, top}, {right, top}, {right, foot}, {left, foot}};
  // A stripe is where x + y lies within `reach` of its middle.
  const double step = base::to_points(hatch.pitch) * std::numbers::sqrt2;
  const double reach = base::to_points(hatch.width) * std::numbers::sqrt2 / 2;
  const double first = left + top + step / 2;
  for (int i = 0; first + i * step - reach < right + foot; ++i) {
    const double middle = first + i * step;
    const std::vector<Spot> stripe = cut(cut(corners, middle + reach, 1), middle - reach, -1);
    if (stripe.size() < 3) continue;
    std::vector<Point> placed;
    placed.reserve(stripe.size());
    for (const Spot& spot : stripe)
      placed.push_back(rounded_into(spot, box));
    const std::vector<Step> steps = outline_of(placed);
    path.steps.insert(path.steps.end(), steps.begin(), steps.end());
  }
  return path;
}

}  // namespace winchbook::layout
