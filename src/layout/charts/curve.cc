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

constexpr Length kTick = points(3);
constexpr Length kStroke = points(0.35);       // of the band, upright
constexpr Length kStrokePitch = points(2.75);  // narrow enough for a copier to keep it a band
constexpr Length kBandEdge = points(0.75);

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

/// The plot of one chart: its scales, its axes, and what is drawn on them.
class CurvePlot {
 public:
  CurvePlot(const CurveChart& chart, Drawing& drawing, const Setting& setting)
      : chart_(chart), drawing_(drawing), setting_(setting), spots_(in_order(chart.points)) {}

  [[nodiscard]] bool drawable() const { return spots_.size() >= 2; }

  /// Draws below `y`; returns the foot.
  Length draw(Length y, Length width) {
    top_ = y;
    foot_ = y + points(chart_.height);
    width_ = width;
    set_scales();
    draw_axes();
    draw_band();
    draw_levels();
    draw_curve(spots_, points(1.5));
    return draw_labels();
  }

 private:
  void set_scales() {
    std::vector<double> values;
    for (const auto* spots : {&chart_.points, &chart_.low, &chart_.high}) {
      for (const Spot& spot : *spots)
        values.push_back(spot.second);
    }
    for (const CurveChart::Level& level : chart_.levels)
      values.push_back(level.at);
    const auto [least, most] = std::minmax_element(values.begin(), values.end());
    steps_ = steps_over(chart_.from_nought ? std::min(0.0, *least) : *least, *most);
    Length widest;
    for (int i = 0; i <= steps_.count; ++i)
      widest = std::max(widest, setting_.width(Role::chart, number_at(i)));
    axis_ = std::min(widest + kTick + points(3), width_ / 2);
    across_ = {spots_.front().first, spots_.back().first, axis_, width_ - points(0.75)};
    up_ = {steps_.first, steps_.first + steps_.count * steps_.step, foot_, top_};
  }

  [[nodiscard]] std::string number_at(int i) const {
    return fmt::format("{:.4g}", steps_.first + i * steps_.step);
  }

  void draw_axes() {
    drawing_.line({axis_, top_}, {axis_, foot_}, points(0.5));
    drawing_.line({axis_, foot_}, {width_, foot_}, points(0.5));
    for (int i = 0; i <= steps_.count; ++i) {
      const Length at = up_.at(steps_.first + i * steps_.step);
      drawing_.line({axis_ - kTick, at}, {axis_, at}, points(0.5));
      const Label number =
          drawing_.label(document::plain(number_at(i)), axis_ - kTick - points(2), Align::right);
      drawing_.put(number, {}, at);
    }
  }

  void draw_curve(const std::vector<Spot>& spots, Length thickness) {
    PathItem curve = curve_through(spots, across_, up_, {thickness, drawing_.style().ink});
    curve.tag = drawing_.figure();
    drawing_.add(std::move(curve));
  }

  /// Upright strokes from the least to the most, between two thin edges.
  void draw_band() {
    const std::vector<Spot> low = in_order(chart_.low);
    const std::vector<Spot> high = in_order(chart_.high);
    if (low.size() < 2 || high.size() < 2) return;
    for (Length x = axis_ + kStrokePitch; x < width_ - points(1.5); x += kStrokePitch) {
      const double at = across_.from + base::to_points(x - axis_) /
                                           base::to_points(across_.right - axis_) *
                                           (across_.to - across_.from);
      drawing_.line({x, up_.at(value_at(high, at))}, {x, up_.at(value_at(low, at))}, kStroke);
    }
    draw_curve(low, kBandEdge);
    draw_curve(high, kBandEdge);
  }

  /// Straight from one point to the next, and level beyond the ends.
  static double value_at(const std::vector<Spot>& spots, double x) {
    const auto after =
        std::find_if(spots.begin(), spots.end(), [&](const Spot& spot) { return spot.first >= x; });
    if (after == spots.begin()) return spots.front().second;
    if (after == spots.end()) return spots.back().second;
    const Spot& before = *(after - 1);
    const double share = (x - before.first) / (after->first - before.first);
    return before.second + share * (after->second - before.second);
  }

  /// Names stand over their lines, the lowest line first; one that would meet the name below it
  /// goes up.
  void draw_levels() {
    std::vector<CurveChart::Level> levels = chart_.levels;
    std::stable_sort(levels.begin(), levels.end(),
                     [](const auto& a, const auto& b) { return a.at < b.at; });
    Length free = foot_;
    for (const CurveChart::Level& level : levels) {
      const Length y = up_.at(level.at);
      drawing_.line({axis_, y}, {width_ - points(0.75), y}, points(0.5));
      const Label name = drawing_.label(document::plain(level.name), width_ - axis_ - points(6));
      const Length middle = std::min(y, free) - points(5.5) - drawing_.leading() * (name.lines - 1);
      if (middle < top_) continue;  // no room: the words under the chart name it
      drawing_.put(name, axis_ + points(5), middle);
      free = middle - points(5.5);
    }
  }

  Length draw_labels() {
    Length y = foot_;
    if (!chart_.marks.empty()) {
      y += drawing_.leading();
      for (const auto& [at, number] : chart_.marks) {
        const Length x = across_.at(at);
        drawing_.line({x, foot_}, {x, foot_ + kTick}, points(0.5));
        drawing_.put_number(number, x, y);
      }
    }
    const Length words = y + points(9);
    const Length column = (width_ - axis_) / 2 - points(3);
    const Label first = drawing_.label(document::plain(chart_.first_label), column);
    const Label last = drawing_.label(document::plain(chart_.last_label), column, Align::right);
    drawing_.put(first, axis_, words);
    drawing_.put(last, width_ - column, words);
    return y + points(3.75) + drawing_.leading() * std::max(first.lines, last.lines);
  }

  const CurveChart& chart_;
  Drawing& drawing_;
  const Setting& setting_;
  std::vector<Spot> spots_;
  Steps steps_;
  Scale across_;
  Scale up_;
  Length top_;
  Length foot_;
  Length axis_;
  Length width_;
};

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
  CurvePlot plot(chart, drawing, setting);
  if (!plot.drawable()) return drawing.finish(y);
  y = plot.draw(y, width);
  if (!chart.below.empty()) {
    const Label below = drawing.label(chart.below, width);
    drawing.put_frame(below.frame, {Length{}, y + points(3.75)});
    y += points(3.75) + below.frame.height;
  }
  return drawing.finish(y);
}

}  // namespace winchbook::layout::charts
