#include "layout/charts/dating_axis.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <vector>

namespace winchbook::layout::charts {
namespace {

using base::points;
using document::DatingChart;
using End = DatingChart::End;

constexpr Length kShortest = points(6);  // of a bar whose other end is not known

std::vector<double> known_years(const DatingChart& chart) {
  std::vector<double> years;
  for (const DatingChart::Mark& mark : chart.marks) {
    if (mark.first_end != End::none) years.push_back(mark.first);
    if (mark.last_end != End::none) years.push_back(mark.last);
  }
  for (const auto& range : {chart.window, chart.half, chart.nine_tenths}) {
    if (!range) continue;
    years.push_back(range->first);
    years.push_back(range->last + 1);
  }
  for (const auto& [year, share] : chart.profile) {
    years.push_back(year);
    years.push_back(year + 1);
  }
  return years;
}

bool dots_need_room(const DatingChart& chart, const Scale& scale, bool at_first) {
  return std::any_of(chart.marks.begin(), chart.marks.end(), [&](const DatingChart::Mark& mark) {
    if ((at_first ? mark.first_end : mark.last_end) != End::none) return false;
    if ((at_first ? mark.last_end : mark.first_end) == End::none) return false;
    const Length room =
        at_first ? scale.at(mark.last) - scale.left : scale.right - scale.at(mark.first);
    return room < kOpenEnd + kShortest;
  });
}

/// Years between two numbers, so that they stand well apart.
int years_a_number(const YearAxis& axis) {
  constexpr std::array<int, 7> kSteps = {5, 10, 20, 50, 100, 200, 500};
  const double width = base::to_points(axis.scale.right - axis.scale.left);
  for (const int step : kSteps) {
    if (width * step / (axis.last - axis.first) >= 30) return step;
  }
  return 1000;
}

}  // namespace

std::optional<YearAxis> year_axis_of(const DatingChart& chart, Length left, Length right) {
  const std::vector<double> years = known_years(chart);
  if (years.empty()) return std::nullopt;
  const auto [least, most] = std::minmax_element(years.begin(), years.end());
  YearAxis axis;
  axis.first = static_cast<int>(std::floor(*least / 10)) * 10;
  axis.last = std::max(static_cast<int>(std::ceil(*most / 10)) * 10, axis.first + 10);
  const auto rescale = [&] {
    axis.scale = {static_cast<double>(axis.first), static_cast<double>(axis.last), left, right};
  };
  rescale();
  for (int tries = 0; tries < 20; ++tries) {
    const bool earlier = dots_need_room(chart, axis.scale, true);
    const bool later = dots_need_room(chart, axis.scale, false);
    if (!earlier && !later) break;
    if (earlier) axis.first -= 10;
    if (later) axis.last += 10;
    rescale();
  }
  return axis;
}

Length draw_year_axis(const YearAxis& axis, Length top, Drawing& drawing) {
  const Scale& scale = axis.scale;
  drawing.line({scale.left, top}, {scale.right, top}, points(0.75));
  const int numbered = years_a_number(axis);
  const int ticked = numbered <= 10 ? 1 : numbered / 5;
  for (int year = axis.first; year <= axis.last; ++year) {
    const bool number = year % numbered == 0;
    if (!number && year % ticked != 0) continue;
    const Length at =
        std::clamp(scale.at(year), scale.left + points(0.25), scale.right - points(0.25));
    drawing.line({at, top}, {at, top + points(number ? 5 : 2.5)}, points(0.5));
    if (number) drawing.put_number(std::to_string(year), at, top + points(13.5));
  }
  return points(15);
}

}  // namespace winchbook::layout::charts
