#include <algorithm>

#include "layout/charts/charts.h"
#include "layout/charts/drawing.h"

namespace winchbook::layout::charts {
namespace {

using base::points;
using document::BarChart;

constexpr Length kPitch = points(15);
constexpr Length kBar = points(8);
constexpr Length kGap = points(6);

struct Row {
  Label name;
  Label figures;
  double value = 0;
  double from = 0;
};

/// Bars as long as they may be while every figure still stands right of its bar.
Length length_of_hundred(const std::vector<Row>& rows, Length room) {
  double hundred = base::to_points(room) * 200 / 234;
  for (const Row& row : rows) {
    if (row.value <= 0) continue;
    const double bar = base::to_points(room - kGap - row.figures.width);
    hundred = std::min(hundred, bar * 100 / row.value);
  }
  return points(hundred);
}

}  // namespace

Frame set_bars(const BarChart& chart, Length width, TagId figure, const Setting& setting) {
  Drawing drawing(width, figure, setting);
  const Length plot =
      width < points(400) ? std::min(points(75), width / 2) : columns_of(width, {}).plot;
  const Length room = width - plot;
  std::vector<Row> rows;
  for (const auto& bar : chart.bars) {
    const document::Text name = bar.chosen ? in_bold(bar.name) : document::plain(bar.name);
    rows.push_back({drawing.label(name, plot - kGap),
                    drawing.label(document::plain(bar.figures), room / 2),
                    std::clamp(bar.value, 0.0, 100.0), std::clamp(bar.from, 0.0, bar.value)});
  }
  const Scale scale{0, 100, plot, plot + length_of_hundred(rows, room)};
  Length y;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const Row& row = rows[i];
    const Length middle = y + kPitch / 2;
    const Length begin = scale.at(row.from);
    const Length end = std::max(scale.at(row.value), begin + points(0.75));
    const Rect bar{begin, middle - kBar / 2, end - begin, kBar};
    if (chart.bars[i].chosen || bar.width <= points(1.5)) {
      drawing.box(bar, drawing.style().ink);
    } else {
      drawing.outline(bar, points(0.75));
    }
    drawing.put(row.name, {}, middle);
    drawing.put(row.figures, end + kGap, middle);
    const int lines = std::max(row.name.lines, row.figures.lines);
    y += std::max(kPitch, points(3.75) + drawing.leading() * lines);
  }
  return drawing.finish(y);
}

}  // namespace winchbook::layout::charts
