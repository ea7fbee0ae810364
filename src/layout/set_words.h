#pragma once

#include <vector>

#include "layout/inline_text.h"

namespace winchbook::layout {

/// One set line: baseline at y 0, the column's left edge at x 0.
struct SetLine {
  std::vector<Item> items;
  Length width;  ///< from the column's left edge to the end of what is seen
};

/// The column that lines are set in: `width`, the first lines moved in by `indents`.
struct Measure {
  Length width;
  std::vector<Length> indents = {};
};

/// Breaks the endless line and sets its lines; no line for no words.
[[nodiscard]] std::vector<SetLine> set_lines(const InlineText& line, const Measure& measure,
                                             const Setting& setting);

/// Lines under each other at a role's leading, the first baseline where the role has it.
[[nodiscard]] Frame stacked(const std::vector<SetLine>& lines, document::Role role, Length width,
                            const Setting& setting);

/// Widths a column of these words could have: its widest unbreakable piece, and all in one line.
struct ContentWidths {
  Length least;
  Length most;
};
[[nodiscard]] ContentWidths content_widths(const InlineText& line, const Setting& setting);

}  // namespace winchbook::layout
