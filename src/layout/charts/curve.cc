#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include <fmt/format.h>

#include "layout/charts/charts.h"
#include "layout/charts/drawing.h"

namespace winchbook::layout::charts {
namespace {

using base::points;
using document::CurveChart;
using document::Role;

constexpr Length kPlot = points(62);
constexpr Length kTick = points(3);

using Spot = std::pair<double, double>;

/// Whole steps of 1, 2, 4 or 5 times a power of ten that divide the values in five at most.
struct Steps {
  double first = 0;
  double step = 1;
  int count = 1;  ///< steps, so one more number
};

Steps steps_over(double low, double high) {
  constexpr std::array<double, 5> kNice = {1, 2, 4, 5, 10};
  const double span = std::max(high - low, 1e-9);
  double power = std::pow(10, std::floor(std::log10(span / 4)));
  for (const double nice : kNice) {
    const double step = nice * power;
    const double first = std::floor(low / step + 1e-9) * step;
    const int count = static_cast<int>(std::ceil((high - first) / step - 1e-9));
    if (count <= 4) return {first, step, std::max(1, count)};
  }
  return {std::floor(low), std::ceil(span), 1};
}

/// The slope at an end, from the two nearest secants and the widths they span; never so steep that
/// the curve would turn.
double end_slope(double near, double next, double near_width, double next_width) {
  const double slope =
      ((2 * near_width + next_width) * near - near_width * next) / (near_width + next_width);
  if (slope * near <= 0) return 0;
  return std::abs(slope) > 3 * std::abs(near) ? 3 * near : slope;
}

/// Slopes by which a cubic through the points never swings beyond them (Fritsch and Carlson,
/// SIAM Journal on Numerical Analysis 17 (1980), 238–246).
std::vector<double> slopes_of(const std::vector<Spot>& spots) {
  std::vector<double> widths;
  std::vector<double> secants;
  for (std::size_t i = 0; i + 1 < spots.size(); ++i) {
    widths.push_back(spots[i + 1].first - spots[i].first);
    secants.push_back((spots[i + 1].second - spots[i].second) / widths.back());
  }
  if (secants.size() == 1) return {secants[0], secants[0]};
  std::vector<double> slopes = {end_slope(secants[0], secants[1], widths[0], widths[1])};
  for (std::size_t i = 1; i < secants.size(); ++i) {
    const double product = secants[i - 1] * secants[i];
    slopes.push_back(product <= 0 ? 0 : 2 * product / (secants[i - 1] + secants[i]));
  }
  const std::size_t last = secants.size() - 1;
  slopes.push_back(end_slope(secants[last], secants[last - 1], widths[last], widths[last - 1]));
  return slopes;
}

/// The points in order of x, each x once.
std::vector<Spot> in_order(std::vector<Spot> spots) {
  std::stable_sort(spots.begin(), spots.end(),
                   [](const Spot& a, const Spot& b) { return a.first < b.first; });
  const auto same = [](const Spot& a, const Spot& b) { return b.first - a.first < 1e-9; };
  spots.erase(std::unique(spots.begin(), spots.end(), same), spots.end());
  return spots;
}

PathItem curve_through(const std::vector<Spot>& spots, const Scale& across, const Scale& up,
                       const Stroke& stroke) {
  const auto on_paper = [&](double x, double y) { return Point{across.at(x), up.at(y)}; };
  PathItem path;
  path.stroked = true;
  path.stroke = stroke;
  path.steps.push_back(
      {.kind = PathItem::Step::Kind::move, .to = on_paper(spots[0].first, spots[0].second)});
  const std::vector<double> slopes = slopes_of(spots);
  for (std::size_t i = 0; i + 1 < spots.size(); ++i) {
    const auto [x, y] = spots[i];
    const auto [next_x, next_y] = spots[i + 1];
    const double third = (next_x - x) / 3;
    path.steps.push_back({.kind = PathItem::Step::Kind::curve,
                          .to = on_paper(next_x, next_y),
                          .control1 = on_paper(x + third, y + third * slopes[i]),
                          .control2 = on_paper(next_x - third, next_y - third * slopes[i + 1])});
  }
  return path;
}

}  // namespace

Frame set_curve(const CurveChart& chart, Length width, TagId figure, const Setting& setting) {
  Drawing drawing(width, figure, setting);
  Length y;
  if (!chart.title.empty()) {
    const Label title =
        drawing.label(document::plain(chart.title), width, Align::left, Role::label);
    drawing.put_frame(title.frame, {});
    y += title.frame.height + points(7.5);
  }
  if (!chart.unit.empty()) {
    const Label unit = drawing.label(document::plain(chart.unit), width);
    drawing.put_frame(unit.frame, {Length{}, y});
    y += unit.frame.height + points(3.75);
  }
  y = std::max(y, points(3.75));  // half of the topmost number stands above the axis
  const std::vector<Spot> spots = in_order(chart.points);
  if (spots.size() < 2) return drawing.finish(y);
  const auto [least, most] = std::minmax_element(
      spots.begin(), spots.end(), [](const Spot& a, const Spot& b) { return a.second < b.second; });
  const Steps steps = steps_over(least->second, most->second);

  const auto number_at = [&](int i) { return fmt::format("{:.4g}", steps.first + i * steps.step); };
  Length widest;
  for (int i = 0; i <= steps.count; ++i) {
    widest = std::max(widest, setting.width(Role::chart, number_at(i)));
  }
  const Length axis = std::min(widest + kTick + points(3), width / 2);
  const Scale across{spots.front().first, spots.back().first, axis, width - points(0.75)};
  const Scale up{steps.first, steps.first + steps.count * steps.step, y + kPlot, y};
  drawing.line({axis, y}, {axis, y + kPlot}, points(0.5));
  drawing.line({axis, y + kPlot}, {width, y + kPlot}, points(0.5));
  for (int i = 0; i <= steps.count; ++i) {
    const Length at = up.at(steps.first + i * steps.step);
    drawing.line({axis - kTick, at}, {axis, at}, points(0.5));
    const Label number =
        drawing.label(document::plain(number_at(i)), axis - kTick - points(2), Align::right);
    drawing.put(number, {}, at);
  }
  PathItem curve = curve_through(spots, across, up, {points(1.5), drawing.style().ink});
  curve.tag = figure;
  drawing.add(std::move(curve));

  const Length words = y + kPlot + points(9);
  const Length column = (width - axis) / 2 - points(3);
  const Label first = drawing.label(document::plain(chart.first_label), column);
  const Label last = drawing.label(document::plain(chart.last_label), column, Align::right);
  drawing.put(first, axis, words);
  drawing.put(last, width - column, words);
  const int lines = std::max(first.lines, last.lines);
  return drawing.finish(y + kPlot + points(3.75) + drawing.leading() * lines);
}

}  // namespace winchbook::layout::charts
