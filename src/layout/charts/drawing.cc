#include "layout/charts/drawing.h"

#include <algorithm>
#include <map>
#include <utility>

#include "layout/shapes.h"

namespace winchbook::layout::charts {
namespace {

using base::points;
using document::Role;

/// The right end of each line, by its baseline.
std::map<Length, Length> line_ends(const Frame& frame, const text::FontMetrics& fonts) {
  std::map<Length, Length> ends;
  for (const Item& item : frame.items) {
    if (const auto* text = std::get_if<TextItem>(&item)) {
      Length& end = ends[text->origin.y];
      end = std::max(end, text->origin.x + seen_width_of(*text, fonts));
    }
  }
  return ends;
}

}  // namespace

document::Text in_bold(std::string words) {
  document::Run run{std::move(words)};
  run.bold = true;
  return {{std::move(run)}, {}};
}

document::Text in_italic(std::string words) {
  document::Run run{std::move(words)};
  run.italic = true;
  return {{std::move(run)}, {}};
}

Length Scale::at(double value) const {
  const double inside = std::clamp(value, from, to);
  const double share = to > from ? (inside - from) / (to - from) : 0;
  return left + points(base::to_points(right - left) * share);
}

void Drawing::line(Point from, Point to, Length thickness) {
  add(drawn_line(from, to, {thickness, style().ink}, figure_));
}

void Drawing::dashes(Point from, Point to, Length thickness, Length dash, Length gap) {
  add(drawn_line(from, to, {thickness, style().ink, {dash, gap}}, figure_));
}

void Drawing::box(Rect box, Colour colour) {
  add(filled_box(box, colour, figure_));
}

void Drawing::outline(Rect box, Length thickness) {
  add(outlined_box(box, {thickness, style().ink}, figure_));
}

void Drawing::polygon(const std::vector<Point>& corners, Colour colour) {
  add(filled_polygon(corners, colour, figure_));
}

Label Drawing::label(const document::Text& words, Length column, Align align, Role role) const {
  Label label{set_words(words, role, column, figure_, setting_), {}, 1};
  const std::map<Length, Length> ends = line_ends(label.frame, setting_.fonts);
  for (const auto& [baseline, end] : ends)
    label.width = std::max(label.width, end);
  label.lines = std::max(1, static_cast<int>(ends.size()));
  if (align == Align::left) return label;
  for (Item& item : label.frame.items) {
    auto* text = std::get_if<TextItem>(&item);
    if (text == nullptr) continue;
    const Length spare = column - ends.at(text->origin.y);
    text->origin.x += align == Align::right ? spare : spare / 2;
  }
  return label;
}

void Drawing::put(const Label& label, Length left, Length middle, Role role) {
  const text::FaceMetrics metrics = setting_.fonts.metrics(setting_.face(role));
  const Length capitals =
      base::scaled(style().of(role).size, metrics.cap_height, metrics.units_per_em);
  const Length top = middle + capitals / 2 - first_baseline(role, setting_);
  place(label.frame, {left, top}, frame_.items);
}

void Drawing::put_number(const std::string& digits, Length middle, Length baseline) {
  const Length wide = setting_.width(Role::chart, digits);
  const Length left = std::clamp(middle - wide / 2, Length{}, std::max(Length{}, width() - wide));
  add(setting_.line(Role::chart, digits, {left, baseline}, figure_));
}

Columns columns_of(Length width, Length least) {
  const Length label = std::max(least, base::scaled(width, 156, 471));
  return {label, label + points(6)};
}

}  // namespace winchbook::layout::charts
