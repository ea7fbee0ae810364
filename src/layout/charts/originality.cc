#include <algorithm>
#include <array>
#include <string>

#include "layout/charts/charts.h"
#include "layout/charts/drawing.h"
#include "layout/shapes.h"

namespace winchbook::layout::charts {
namespace {

using base::points;
using document::OriginalityChart;
using document::Role;

constexpr Length kPitch = points(15);
constexpr Length kBetween = points(7.5);
constexpr Length kBar = points(9);
constexpr Length kEdge = points(0.75);
constexpr Length kOutline = points(0.5);

struct Places {
  Columns columns;
  Length when;  ///< the width of "as found", right of the questions' names
  Scale scale;
};

Places places_of(const OriginalityChart& chart, const Drawing& drawing) {
  Length when;
  Length figures = points(51);
  for (const auto& question : chart.questions) {
    for (const auto& bar : question.bars) {
      when = std::max(when, drawing.setting().width(Role::chart, bar.when));
      figures =
          std::max(figures, drawing.setting().width(Role::chart, bar.figures, {.bold = true}));
    }
  }
  Places places{columns_of(drawing.width(), points(90)), {}, {}};
  places.when = std::min(when, places.columns.label / 2);
  const Length room = drawing.width() - places.columns.plot;
  const Length bars = room - std::min(figures, room / 2) - points(6);
  places.scale = {0, 100, places.columns.plot, places.columns.plot + bars};
  return places;
}

void draw_bar(const document::Share& share, Length top, const Scale& scale, Drawing& drawing) {
  const Length low = scale.at(std::min(share.low, share.high));
  const Length high = scale.at(std::max(share.low, share.high));
  const Colour ink = drawing.style().ink;
  if (high > low) {
    const Rect open{low, top, high - low, kBar};
    const Length edge = std::min(kEdge, open.width / 2);
    drawing.add(hatched_box(open, {points(1), points(2.5), ink}, drawing.figure()));
    drawing.box({low, top, edge, kBar}, ink);
    drawing.box({high - edge, top, edge, kBar}, ink);
  }
  if (low > scale.left) drawing.box({scale.left, top, low - scale.left, kBar}, ink);
  drawing.outline({scale.left, top, scale.right - scale.left, kBar}, kOutline);
}

/// Returns how high the question came out.
Length draw_question(const OriginalityChart::Question& question, Length top, const Places& places,
                     Drawing& drawing) {
  const Length name_column = places.columns.label - places.when - points(9);
  const Label name = drawing.label(in_bold(question.name), name_column);
  drawing.put(name, {}, top + kPitch / 2);
  Length y = top;
  for (const auto& bar : question.bars) {
    const Label when = drawing.label(document::plain(bar.when), places.when, Align::right);
    const Length figures_column = drawing.width() - places.scale.right - points(6);
    const Label figures = drawing.label(in_bold(bar.figures), figures_column, Align::right);
    const Length middle = y + kPitch / 2;
    drawing.put(when, places.columns.label - places.when, middle);
    draw_bar(bar.share, middle - kBar / 2, places.scale, drawing);
    drawing.put(figures, places.scale.right + points(6), middle);
    y += std::max(kPitch, points(3.75) + drawing.leading() * std::max(when.lines, figures.lines));
  }
  return std::max(y - top, points(3.75) + drawing.leading() * name.lines);
}

void draw_axis(Length top, const Scale& scale, Drawing& drawing) {
  constexpr std::array<int, 5> kMarked = {0, 25, 50, 75, 100};
  for (const int value : kMarked) {
    // The outermost ticks stand flush with the bars' outer edges.
    const Length tick =
        std::clamp(scale.at(value), scale.left + kOutline / 2, scale.right - kOutline / 2);
    drawing.line({tick, top}, {tick, top + points(3.75)}, kOutline);
    drawing.put_number(std::to_string(value), scale.at(value), top + points(11.25));
  }
}

}  // namespace

Frame set_originality(const OriginalityChart& chart, Length width, TagId figure,
                      const Setting& setting) {
  Drawing drawing(width, figure, setting);
  const Places places = places_of(chart, drawing);
  Length y;
  for (const auto& question : chart.questions) {
    if (y > Length{}) y += kBetween;
    y += draw_question(question, y, places, drawing);
  }
  draw_axis(y, places.scale, drawing);
  y += points(15);
  if (!chart.below.empty()) {
    const Label below =
        drawing.label(chart.below, width - places.columns.plot, Align::left, Role::caption);
    y += points(3.75);
    drawing.put_frame(below.frame, {places.columns.plot, y});
    y += below.frame.height;
  }
  return drawing.finish(y);
}

}  // namespace winchbook::layout::charts
