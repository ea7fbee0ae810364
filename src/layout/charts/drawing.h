#pragma once

#include <string>
#include <utility>
#include <vector>

#include "document/text.h"
#include "layout/frame.h"

/// Charts: vector drawings, each one figure of the structure tree.
namespace winchbook::layout::charts {

enum class Align { left, centre, right };

/// Words of a chart, ready to be put somewhere.
struct Label {
  Frame frame;
  Length width;  ///< of the widest line, not of the column
  int lines = 1;
};

[[nodiscard]] document::Text in_bold(std::string words);
[[nodiscard]] document::Text in_italic(std::string words);

/// Values on a stretch of paper: `from` stands at `left`, `to` at `right`.
struct Scale {
  double from = 0;
  double to = 100;
  Length left;
  Length right;

  /// Values beyond the ends are drawn at the ends.
  [[nodiscard]] Length at(double value) const;
};

/// A chart while it is being drawn; everything added to it carries the chart's tag.
class Drawing {
 public:
  Drawing(Length width, TagId figure, const Setting& setting)
      : setting_(setting), figure_(figure), frame_{width, {}, {}} {}

  [[nodiscard]] const Setting& setting() const { return setting_; }
  [[nodiscard]] const document::Style& style() const { return setting_.style; }
  [[nodiscard]] Length width() const { return frame_.width; }

  void add(Item item) { frame_.items.push_back(std::move(item)); }
  void line(Point from, Point to, Length thickness);
  void dashes(Point from, Point to, Length thickness, Length dash, Length gap);
  void box(Rect box, Colour colour);
  void outline(Rect box, Length thickness);
  void polygon(const std::vector<Point>& corners, Colour colour);

  /// Words broken into `column`, each line placed in it as `align` says.
  [[nodiscard]] Label label(const document::Text& words, Length column, Align align = Align::left,
                            document::Role role = document::Role::chart) const;
  /// Puts a label's first line so that its capitals have their middle at `middle`.
  void put(const Label& label, Length left, Length middle,
           document::Role role = document::Role::chart);
  /// A number of an axis, centred on `middle` but kept inside the chart.
  void put_number(const std::string& digits, Length middle, Length baseline);

  /// Puts a label's frame as it is.
  void put_frame(const Frame& frame, Point at) { place(frame, at, frame_.items); }

  [[nodiscard]] Length leading(document::Role role = document::Role::chart) const {
    return style().of(role).leading;
  }
  [[nodiscard]] TagId figure() const { return figure_; }
  [[nodiscard]] Frame finish(Length height) {
    frame_.height = height;
    return std::move(frame_);
  }

 private:
  const Setting& setting_;
  TagId figure_;
  Frame frame_;
};

/// Where the plot starts: labels stand in 0–156 and the plot from 162 when a chart fills the frame;
/// in a narrower chart both give way, the labels not below `least`.
struct Columns {
  Length label;
  Length plot;
};
[[nodiscard]] Columns columns_of(Length width, Length least);

}  // namespace winchbook::layout::charts
