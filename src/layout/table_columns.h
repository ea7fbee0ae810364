#pragma once

#include <vector>

#include "base/length.h"

namespace winchbook::layout {

/// What a column holds, or how wide it has to be.
struct ColumnNeed {
  base::Length least;  ///< its widest unbreakable piece
  base::Length most;   ///< everything in one line
  base::Length fixed;  ///< 0: by content
};

/// Widths of the columns, gaps at their right included but for the last; together `total`: where
/// all are fixed the last one takes what they leave. Columns sized by content get all they could
/// use, and share what is left over in proportion to it; when that is too much they get what they
/// must have and share the rest; when even that is too much, the widest columns give way: their
/// words can break anywhere.
[[nodiscard]] std::vector<base::Length> column_widths(std::vector<ColumnNeed> needs,
                                                      base::Length total, base::Length gap);

}  // namespace winchbook::layout
