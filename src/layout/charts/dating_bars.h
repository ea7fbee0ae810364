#pragma once

#include "document/chart.h"
#include "layout/charts/drawing.h"

namespace winchbook::layout::charts {

/// Where a mark's bar runs on paper, and how it ends.
struct DatingBar {
  Length from;
  Length to;
  document::DatingChart::End first_end = document::DatingChart::End::hard;
  document::DatingChart::End last_end = document::DatingChart::End::hard;
  bool open = false;  ///< the mark was left out
};

[[nodiscard]] DatingBar bar_of(const document::DatingChart::Mark& mark, const Scale& years);

/// Draws the bar round `middle`; where an end is not known, dots run on to the end of `years`.
void draw_bar(const DatingBar& bar, Length middle, const Scale& years, Drawing& drawing);

/// The kinds of end that occur, each as a small bar with its words; returns the height, nothing for
/// no words.
Length draw_dating_key(const document::DatingChart& chart, Length top, Drawing& drawing);

}  // namespace winchbook::layout::charts
