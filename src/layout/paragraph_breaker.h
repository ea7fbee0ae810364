#pragma once

#include <cstddef>
#include <vector>

#include "base/length.h"

namespace winchbook::layout {

/// A place where a line may end, measured along the paragraph set as one endless line.
struct Stop {
  base::Length end;   ///< right end of what is seen when the line ends here, its hyphen included
  base::Length next;  ///< where the following line begins
  bool mandatory = false;
  bool hyphen = false;
};

/// How wide each line is: the first ones as listed, every later one `rest`.
struct LineWidths {
  std::vector<base::Length> first = {};
  base::Length rest;

  [[nodiscard]] base::Length at(std::size_t line) const {
    return line < first.size() ? first[line] : rest;
  }
};

/// The stops at which lines end, the last stop included. As few lines as there can be, and among
/// those the evenest: the sum of the squared gaps at the right is least. The last line's gap does
/// not count, but a single short word alone in it does, and so does a hyphen. A stretch without a
/// stop that is wider than its line stands over.
[[nodiscard]] std::vector<std::size_t> break_lines(const std::vector<Stop>& stops,
                                                   const LineWidths& widths);

}  // namespace winchbook::layout
