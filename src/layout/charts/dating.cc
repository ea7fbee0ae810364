#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <vector>

#include "layout/charts/charts.h"
#include "layout/charts/dating_axis.h"
#include "layout/charts/dating_bars.h"
#include "layout/charts/drawing.h"

namespace winchbook::layout::charts {
namespace {

using base::points;
using document::DatingChart;
using End = DatingChart::End;
using Range = DatingChart::Range;

constexpr Length kProfile = points(52);
constexpr Length kGap = points(4);

/// Lines of words as they were written, each on its own.
document::Text in_bold_lines(const std::string& words) {
  document::Text text = document::in_lines(words);
  for (document::Inline& part : text.parts) {
    if (auto* run = std::get_if<document::Run>(&part)) run->bold = true;
  }
  return text;
}

/// The chart's fixed places while its rows are drawn one under the other.
struct Sheet {
  const DatingChart& chart;
  Columns columns;
  std::optional<YearAxis> axis;
  Scale scale;
  Length row;
};

struct Edges {
  Length from;
  Length to;
};

std::optional<Edges> window_edges(const Sheet& sheet) {
  if (!sheet.chart.window || !sheet.axis) return std::nullopt;
  return Edges{sheet.scale.at(sheet.chart.window->first),
               sheet.scale.at(sheet.chart.window->last + 1)};
}

/// The reason beside a bar that was left out, where it meets neither bar nor window; otherwise
/// nothing, and it goes under the mark's name.
std::optional<Length> place_for_reason(const DatingBar& bar, Length width, const Sheet& sheet) {
  const Scale& scale = sheet.scale;
  const Length start = bar.first_end == End::none ? scale.left : bar.from;
  const Length end = bar.last_end == End::none ? scale.right : bar.to;
  const std::optional<Edges> window = window_edges(sheet);
  for (const Length left : {start - kGap - width, end + kGap}) {
    if (left < scale.left || left + width > scale.right) continue;
    const auto crosses = [&](Length edge) {
      return left - kGap < edge && edge < left + width + kGap;
    };
    if (window && (crosses(window->from) || crosses(window->to))) continue;
    return left;
  }
  return std::nullopt;
}

/// Returns the height of the row.
Length draw_mark(const DatingChart::Mark& mark, Length top, const Sheet& sheet, Drawing& drawing) {
  const bool left_out = !mark.left_out.empty();
  const Length middle = top + sheet.row / 2;
  const DatingBar bar = bar_of(mark, sheet.scale);
  document::Text name = document::plain(mark.name);
  if (left_out) {
    const Label reason = drawing.label(in_italic(mark.left_out), drawing.width());
    std::optional<Length> place;
    if (reason.lines == 1) place = place_for_reason(bar, reason.width, sheet);
    if (place) {
      drawing.put(reason, *place, middle);
    } else {
      document::Run run{mark.left_out};
      run.italic = true;
      name.parts.emplace_back(document::LineEnd{});
      name.parts.emplace_back(std::move(run));
    }
  }
  const Label label = drawing.label(name, sheet.columns.label - points(6));
  drawing.put(label, {}, middle);
  draw_bar(bar, middle, sheet.scale, drawing);
  return std::max(sheet.row, points(3.75) + drawing.leading() * label.lines);
}

/// Returns the height of all rows: the marks that count, then those left out.
Length draw_marks(Length top, const Sheet& sheet, Drawing& drawing) {
  Length y = top;
  for (const DatingChart::Mark& mark : sheet.chart.marks) {
    if (mark.left_out.empty()) y += draw_mark(mark, y, sheet, drawing);
  }
  bool first = true;
  for (const DatingChart::Mark& mark : sheet.chart.marks) {
    if (mark.left_out.empty()) continue;
    if (first) {
      y += points(5.25);
      drawing.dashes({Length{}, y}, {drawing.width(), y}, points(0.5), points(3), points(2));
      y += points(6.75);
      first = false;
    }
    y += draw_mark(mark, y, sheet, drawing);
  }
  return y - top;
}

/// The name of the profile at the left, its columns standing on the axis at the foot.
Length draw_profile(Length top, const Sheet& sheet, Drawing& drawing) {
  const DatingChart& chart = sheet.chart;
  if (chart.profile.empty() || !sheet.axis) return points(7.5);
  const Length column = sheet.columns.label - points(6);
  const Label name = drawing.label(in_bold(chart.profile_name), column);
  const Label note = drawing.label(document::plain(chart.profile_note), column);
  const Length name_middle = top + points(14);
  drawing.put(name, {}, name_middle);
  drawing.put(note, {}, name_middle + drawing.leading() * name.lines);
  const Length words = points(7.5) + drawing.leading() * (name.lines + note.lines);
  const Length height = std::max(points(7.5) + kProfile, words + points(7.5));

  double most = 0;
  for (const auto& [year, share] : chart.profile)
    most = std::max(most, share);
  const Length foot = top + height;
  for (const auto& [year, share] : chart.profile) {
    if (share <= 0 || most <= 0) continue;
    const Length from = sheet.scale.at(year);
    const Length to = sheet.scale.at(year + 1);
    const Length clear = std::min(points(0.9), base::scaled(to - from, 15, 100));
    const Length tall = points(base::to_points(kProfile) * share / (most * 1.1));
    drawing.box({from + clear, foot - tall, to - from - clear * 2, tall}, drawing.style().ink);
  }
  return height;
}

/// A range under the axis, its words at the right or, without room, at the left.
Length draw_range(const Range& range, Length thickness, Length top, const Sheet& sheet,
                  Drawing& drawing) {
  const Length from = sheet.scale.at(range.first);
  const Length to = sheet.scale.at(range.last + 1);
  const Length middle = top + points(5.5);
  drawing.line({from, middle}, {to, middle}, thickness);
  for (const Length end : {from + points(0.375), to - points(0.375)}) {
    drawing.line({end, middle - points(3.5)}, {end, middle + points(3.5)}, points(0.75));
  }
  const document::Text words = document::plain(range.words);
  const Length after = to + points(5.5);
  const Length before = from - points(5.5);
  Label label = drawing.label(words, drawing.width());
  const auto fits = [&](Length room) { return label.lines == 1 && label.width <= room; };
  if (fits(drawing.width() - after)) {
    drawing.put(label, after, middle);
  } else if (fits(before)) {
    drawing.put(label, before - label.width, middle);
  } else {
    label = drawing.label(words, drawing.width() - sheet.scale.left);
    drawing.put(label, sheet.scale.left, middle + points(11.25));
    return points(11.25) + drawing.leading() * label.lines;
  }
  return points(11.25);
}

/// Returns where the rows begin.
Length draw_head(const Sheet& sheet, Drawing& drawing) {
  const std::optional<Edges> window = window_edges(sheet);
  const Length room = sheet.scale.right - sheet.scale.left;
  if (!window) {
    if (sheet.chart.conflict.empty()) return {};
    const Label words = drawing.label(in_bold(sheet.chart.conflict), room);
    drawing.put_frame(words.frame, {sheet.scale.left, Length{}});
    return words.frame.height + points(3.75);
  }
  const Label words = drawing.label(in_bold_lines(sheet.chart.window->words), room);
  const Length centred = (window->from + window->to) / 2 - words.width / 2;
  const Length left = std::clamp(centred, sheet.scale.left,
                                 std::max(sheet.scale.left, sheet.scale.right - words.width));
  const Label lines = drawing.label(in_bold_lines(sheet.chart.window->words),
                                    words.width + points(0.1), Align::centre);
  drawing.put_frame(lines.frame, {left, Length{}});
  return lines.frame.height + points(1.5);
}

}  // namespace

Frame set_dating(const DatingChart& chart, Length width, TagId figure, const Setting& setting) {
  Drawing drawing(width, figure, setting);
  const Columns columns = columns_of(width, points(90));
  // Statements set their charts in tighter lines.
  const Length row = drawing.leading() < points(11) ? points(11.25) : points(15);
  Sheet sheet{chart, columns, year_axis_of(chart, columns.plot, width), {}, row};
  sheet.scale = sheet.axis ? sheet.axis->scale : Scale{0, 1, columns.plot, width};

  const Length head = draw_head(sheet, drawing);
  const std::optional<Edges> window = window_edges(sheet);
  // Bars stand on the tint, so it is drawn before them, once it is known how far down it runs.
  Drawing rows(width, figure, setting);
  Length y = head;
  y += draw_marks(y, sheet, rows);
  y += draw_profile(y, sheet, rows);
  if (window) {
    const Length top = head - points(1.5);
    drawing.box({window->from, top, window->to - window->from, y - top}, drawing.style().tint);
    for (const Length edge : {window->from + points(0.25), window->to - points(0.25)}) {
      drawing.line({edge, top}, {edge, y}, points(0.5));
    }
  }
  drawing.put_frame(rows.finish(y), {});
  if (sheet.axis) {
    y += draw_year_axis(*sheet.axis, y, drawing);
    y += points(3.75);
    if (chart.half) y += draw_range(*chart.half, points(3), y, sheet, drawing);
    if (chart.nine_tenths) y += draw_range(*chart.nine_tenths, points(1), y, sheet, drawing);
  }
  const Length key_top = y + points(7.5);
  const Length key = draw_dating_key(chart, key_top, drawing);
  return drawing.finish(key > Length{} ? key_top + key : y);
}

}  // namespace winchbook::layout::charts
