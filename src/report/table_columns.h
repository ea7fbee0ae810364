#pragma once

#include <vector>

#include "document/document.h"
#include "report/telling.h"

namespace winchbook::report {

/// A column as a chapter declares it: the message that stands over it, and its shape.
struct HeadedColumn {
  const char* head = nullptr;  ///< null: nothing stands over it
  document::Column shape;
};

/// A table of these columns, its head in one row and no rows below it yet.
[[nodiscard]] document::Table table_of(const Telling& telling,
                                       const std::vector<HeadedColumn>& columns);

}  // namespace winchbook::report
