#include "report/table_columns.h"

#include <utility>

namespace winchbook::report {

document::Table table_of(const Telling& telling, const std::vector<HeadedColumn>& columns) {
  document::Table table;
  document::Row head;
  for (const HeadedColumn& column : columns) {
    table.columns.push_back(column.shape);
    head.cells.push_back(
        {document::plain(column.head == nullptr ? "" : telling.words.say(column.head))});
  }
  table.head.push_back(std::move(head));
  return table;
}

}  // namespace winchbook::report
