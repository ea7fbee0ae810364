#include <algorithm>
#include <cstddef>
#include <vector>

#include "layout/charts/charts.h"
#include "layout/charts/drawing.h"
#include "layout/shapes.h"

namespace winchbook::layout::charts {
namespace {

using base::points;
using document::ConditionChart;
using document::Role;
using document::Sign;

constexpr Length kAbove = points(13);    // from the top of an axis's block to its line
constexpr Length kMark = points(8);      // from the line to the first marks on either side
constexpr Length kRadius = points(3.6);  // of ring and disc, outside
constexpr Length kFactGap = points(3.4);
constexpr Length kWords = points(19);       // from the line to the middle of its words
constexpr Length kLeastFact = points(100);  // the narrowest column a fact is broken into
constexpr Length kTick = points(3);
constexpr Length kWhite = points(4);  // kept between neighbours on one level
constexpr Colour kPaper{255, 255, 255};

/// A stretch of one level that is already taken.
struct Stretch {
  Length from;
  Length to;
};

/// The levels above a line, or those below it, nearest first.
class Side {
 public:
  /// Finds the nearest `count` levels, one upon the other, that are free over the stretch, and
  /// takes them.
  std::size_t take(Stretch stretch, std::size_t count) {
    std::size_t first = 0;
    while (!free(stretch, first, count))
      ++first;
    if (levels_.size() < first + count) levels_.resize(first + count);
    for (std::size_t i = first; i < first + count; ++i)
      levels_[i].push_back(stretch);
    return first;
  }
  /// How much farther this side reaches than one level would.
  [[nodiscard]] Length beyond_one(Length leading) const {
    return levels_.size() < 2 ? Length{} : leading * static_cast<int>(levels_.size() - 1);
  }

 private:
  [[nodiscard]] bool free(Stretch stretch, std::size_t first, std::size_t count) const {
    for (std::size_t i = first; i < std::min(first + count, levels_.size()); ++i) {
      for (const Stretch& taken : levels_[i]) {
        if (stretch.from < taken.to + kWhite && taken.from < stretch.to + kWhite) return false;
      }
    }
    return true;
  }

  std::vector<std::vector<Stretch>> levels_;
};

struct PlacedMark {
  Sign sign = Sign::found;
  Length low;
  Length middle;
  Length high;
  Label fact;
  Length fact_left;
  bool fact_apart = false;  ///< on levels of its own, beyond the mark's
  std::size_t level = 0;

  [[nodiscard]] std::size_t levels() const {
    return static_cast<std::size_t>(fact.lines) + (fact_apart ? 1 : 0);
  }
};

/// A mark with its fact at its right or, where that has no room, at its left; a fact too long for
/// either is broken into lines there, or stands beyond the mark if both are too narrow for that.
PlacedMark beside(const ConditionChart::Mark& mark, const Scale& scale, const Drawing& drawing) {
  PlacedMark placed;
  placed.sign = mark.sign;
  placed.low = scale.at(std::min(mark.at.low, mark.at.high));
  placed.high = scale.at(std::max(mark.at.low, mark.at.high));
  placed.middle = (placed.low + placed.high) / 2;
  const Length after = std::max(placed.high, placed.middle + kRadius) + kFactGap;
  const Length before = std::min(placed.low, placed.middle - kRadius) - kFactGap;
  const Length room_after = drawing.width() - after;
  const Length room_before = before - scale.left;
  const document::Text words = document::plain(mark.fact);
  placed.fact = drawing.label(words, drawing.width());
  const bool fits_after = placed.fact.lines == 1 && placed.fact.width <= room_after;
  const bool fits_before = placed.fact.lines == 1 && placed.fact.width <= room_before;
  const bool right = fits_after || (!fits_before && room_after >= room_before);
  placed.fact_left = after;
  if (!fits_after && !fits_before) {
    const Length room = std::max(room_after, room_before);
    placed.fact_apart = room < kLeastFact;
    placed.fact = drawing.label(words, placed.fact_apart ? drawing.width() - scale.left : room);
  }
  if (placed.fact_apart) {
    placed.fact_left = std::clamp(placed.middle - placed.fact.width / 2, scale.left,
                                  std::max(scale.left, drawing.width() - placed.fact.width));
  } else if (!right) {
    placed.fact_left = before - placed.fact.width;
  }
  return placed;
}

void draw_mark(const PlacedMark& mark, Length line, Drawing& drawing) {
  const bool above = mark.sign == Sign::found;
  const Length away = kMark + drawing.leading() * static_cast<int>(mark.level);
  const Length y = above ? line - away : line + away;
  const Colour ink = drawing.style().ink;
  // A range no wider than its mark is covered by it.
  if (mark.high - mark.low > kRadius * 2 + points(1)) {
    drawing.line({mark.low, y}, {mark.high, y}, points(1));
    for (const Length end : {mark.low + points(0.5), mark.high - points(0.5)}) {
      drawing.line({end, y - points(3)}, {end, y + points(3)}, points(1));
    }
  }
  if (above) {
    drawing.add(ring({mark.middle, y}, kRadius, {points(1), ink}, kPaper, drawing.figure()));
  } else {
    drawing.add(disc({mark.middle, y}, kRadius, ink, drawing.figure()));
  }
  // The lines of a long fact grow away from the axis.
  const Length near = drawing.leading() * (mark.fact_apart ? 1 : 0);
  const Length first = above ? y - near - drawing.leading() * (mark.fact.lines - 1) : y + near;
  drawing.put(mark.fact, mark.fact_left, first);
}

/// Returns the height of the words under the line, beyond one line of them.
Length draw_words(const ConditionChart::Axis& axis, const Scale& scale, Length middle,
                  Drawing& drawing) {
  const int steps = std::max(1, static_cast<int>(axis.words.size()));
  const Length step = (scale.right - scale.left) / steps;
  int lines = 1;
  for (int i = 0; i < static_cast<int>(axis.words.size()); ++i) {
    const Label word = drawing.label(document::plain(axis.words[static_cast<std::size_t>(i)]),
                                     step - points(3), Align::centre, Role::caption);
    drawing.put(word, scale.left + step * i + points(1.5), middle, Role::caption);
    lines = std::max(lines, word.lines);
  }
  return drawing.leading(Role::caption) * (lines - 1);
}

void draw_line(const Scale& scale, int steps, Length line, Drawing& drawing) {
  drawing.line({scale.left, line}, {scale.right, line}, points(0.75));
  for (int i = 0; i <= steps; ++i) {
    Length tick = scale.left + base::scaled(scale.right - scale.left, i, steps);
    tick = std::clamp(tick, scale.left + points(0.25), scale.right - points(0.25));
    drawing.line({tick, line - kTick}, {tick, line + kTick}, points(0.5));
  }
}

/// Draws one axis from `top`; returns the height it took.
Length draw_axis(const ConditionChart::Axis& axis, Length top, const Columns& columns,
                 Drawing& drawing) {
  // The line ends short of the frame so that a mark at its very end stays inside.
  const Scale scale{0, 100, columns.plot, drawing.width() - points(3.75)};
  Side above;
  Side below;
  std::vector<PlacedMark> marks;
  for (const ConditionChart::Mark& mark : axis.marks) {
    PlacedMark placed = beside(mark, scale, drawing);
    Side& side = placed.sign == Sign::found ? above : below;
    const Stretch stretch{
        std::min({placed.low, placed.middle - kRadius, placed.fact_left}),
        std::max({placed.high, placed.middle + kRadius, placed.fact_left + placed.fact.width})};
    placed.level = side.take(stretch, placed.levels());
    marks.push_back(std::move(placed));
  }
  const Length line = top + kAbove + above.beyond_one(drawing.leading());
  draw_line(scale, std::max(1, static_cast<int>(axis.words.size())), line, drawing);
  for (const PlacedMark& mark : marks)
    draw_mark(mark, line, drawing);
  const Length lower = below.beyond_one(drawing.leading());
  const Length words = draw_words(axis, scale, line + kWords + lower, drawing);

  const Label name = drawing.label(in_bold(axis.name), columns.label - points(6));
  const Label what = drawing.label(document::plain(axis.what), columns.label - points(6));
  const Length name_middle = line - points(5.5);
  const Length what_middle = name_middle + drawing.leading() * name.lines;
  drawing.put(name, {}, name_middle);
  drawing.put(what, {}, what_middle);
  const Length named = what_middle + drawing.leading() * what.lines;
  // One line less, and the words under an axis run into the facts of the next.
  const Length pitch = drawing.leading() * 11 / 3;
  return std::max(line + pitch - kAbove + lower + words, named) - top;
}

}  // namespace

Frame set_condition(const ConditionChart& chart, Length width, TagId figure,
                    const Setting& setting) {
  Drawing drawing(width, figure, setting);
  const Columns columns = columns_of(width, points(90));
  Length y;
  for (const ConditionChart::Axis& axis : chart.axes)
    y += draw_axis(axis, y, columns, drawing);
  if (!chart.key.empty()) {
    const Label key = drawing.label(chart.key, width - columns.plot, Align::left, Role::caption);
    drawing.put_frame(key.frame, {columns.plot, y + points(3.75)});
    y += points(3.75) + key.frame.height;
  }
  return drawing.finish(y);
}

}  // namespace winchbook::layout::charts
