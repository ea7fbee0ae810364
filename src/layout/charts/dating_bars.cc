#include "layout/charts/dating_bars.h"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

#include "layout/charts/dating_axis.h"
#include "layout/shapes.h"

namespace winchbook::layout::charts {
namespace {

using base::points;
using document::DatingChart;
using End = DatingChart::End;

constexpr Length kBar = points(5.5);
constexpr Length kStop = points(11);
constexpr Length kStopThick = points(2);
constexpr Length kTaper = points(16);
constexpr Length kOpenStroke = points(0.75);
constexpr Colour kPaper{255, 255, 255};

std::vector<Point> shape_of(const DatingBar& bar, Length middle) {
  const Length half = kBar / 2;
  const Length taper = std::min(kTaper, base::scaled(bar.to - bar.from, 42, 100));
  std::vector<Point> corners;
  if (bar.first_end == End::soft) {
    corners = {{bar.from, middle}, {bar.from + taper, middle - half}};
  } else {
    corners = {{bar.from, middle + half}, {bar.from, middle - half}};
  }
  if (bar.last_end == End::soft) {
    corners.insert(
        corners.end(),
        {{bar.to - taper, middle - half}, {bar.to, middle}, {bar.to - taper, middle + half}});
  } else {
    corners.insert(corners.end(), {{bar.to, middle - half}, {bar.to, middle + half}});
  }
  if (bar.first_end == End::soft) corners.push_back({bar.from + taper, middle + half});
  return corners;
}

PathItem open_shape(DatingBar bar, Length middle, const Drawing& drawing) {
  // A stroke lies half outside its path: draw it inside, where there is an inside.
  if (bar.to - bar.from > kOpenStroke) {
    bar.from += kOpenStroke / 2;
    bar.to -= kOpenStroke / 2;
  }
  PathItem path = filled_polygon(shape_of(bar, middle), kPaper, drawing.figure());
  path.stroked = true;
  path.stroke = {kOpenStroke, drawing.style().ink};
  return path;
}

void draw_stop(Length left, Length middle, Drawing& drawing) {
  drawing.box({left, middle - kStop / 2, kStopThick, kStop}, drawing.style().ink);
}

void draw_dots(Length from, Length to, Length middle, Drawing& drawing) {
  if (from >= to) return;
  drawing.dashes({from, middle}, {to, middle}, points(1), points(1), points(1.6));
}

struct KeyEntry {
  DatingBar bar;  ///< from the entry's own left edge
  std::string words;
};

/// What the chart's marks call for, in the order hard, soft, none, left out.
std::vector<KeyEntry> key_entries(const DatingChart& chart) {
  bool left_out = false;
  std::array<bool, 3> occurs{};
  for (const DatingChart::Mark& mark : chart.marks) {
    occurs.at(static_cast<std::size_t>(mark.first_end)) = true;
    occurs.at(static_cast<std::size_t>(mark.last_end)) = true;
    left_out = left_out || !mark.left_out.empty();
  }
  // Each sample shows one end; at the other it is simply cut off.
  constexpr End kCut = End::none;
  std::vector<KeyEntry> entries;
  if (occurs[0]) entries.push_back({{Length{}, points(22), End::hard, kCut}, chart.key.hard});
  if (occurs[1]) entries.push_back({{Length{}, points(22), End::soft, kCut}, chart.key.soft});
  if (occurs[2]) entries.push_back({{kOpenEnd, points(26), kCut, kCut}, chart.key.none});
  if (left_out) entries.push_back({{Length{}, points(20), kCut, kCut, true}, chart.key.left_out});
  const auto wordless = [](const KeyEntry& entry) { return entry.words.empty(); };
  entries.erase(std::remove_if(entries.begin(), entries.end(), wordless), entries.end());
  return entries;
}

}  // namespace

DatingBar bar_of(const DatingChart::Mark& mark, const Scale& years) {
  DatingBar bar{years.left + kOpenEnd, years.right - kOpenEnd, mark.first_end, mark.last_end,
                !mark.left_out.empty()};
  if (mark.first_end != End::none) bar.from = years.at(mark.first);
  if (mark.last_end != End::none) bar.to = years.at(mark.last);
  if (bar.to < bar.from) std::swap(bar.from, bar.to);
  return bar;
}

void draw_bar(const DatingBar& bar, Length middle, const Scale& years, Drawing& drawing) {
  if (bar.open) {
    drawing.add(open_shape(bar, middle, drawing));
  } else {
    drawing.polygon(shape_of(bar, middle), drawing.style().bar);
  }
  // A stop stands inside its bar: its outer edge is the date.
  if (bar.first_end == End::hard) {
    draw_stop(std::min(bar.from, years.right - kStopThick), middle, drawing);
  }
  if (bar.last_end == End::hard) {
    draw_stop(std::max(bar.to - kStopThick, years.left), middle, drawing);
  }
  if (bar.first_end == End::none) draw_dots(years.left, bar.from, middle, drawing);
  if (bar.last_end == End::none) draw_dots(bar.to, years.right, middle, drawing);
}

Length draw_dating_key(const DatingChart& chart, Length top, Drawing& drawing) {
  const std::vector<KeyEntry> entries = key_entries(chart);
  Length x;
  Length y = top;
  for (const KeyEntry& entry : entries) {
    const Length words_left = entry.bar.to + points(6);
    const Length room = drawing.width() - words_left;
    const Label words = drawing.label(document::plain(entry.words), room);
    if (x > Length{} && words.width > room - x) {
      x = {};
      y += drawing.leading() + points(3.75);
    }
    const Length middle = y + points(7.5);
    DatingBar bar = entry.bar;
    bar.from += x;
    bar.to += x;
    draw_bar(bar, middle, {0, 1, x, bar.to}, drawing);
    drawing.put(words, x + words_left, middle);
    y += drawing.leading() * (words.lines - 1);
    x += words_left + words.width + points(16);
  }
  return entries.empty() ? Length{} : y - top + points(15);
}

}  // namespace winchbook::layout::charts
