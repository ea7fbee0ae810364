#pragma once

#include <functional>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "xml/document.h"

/// Files that are a list: rows of one element, whose fields are elements with a text each.
namespace winchbook::xml {

struct Row {
  base::Location where;
  std::map<std::string, std::string, std::less<>> fields;

  /// The text of a field; empty when it is not there.
  [[nodiscard]] std::string operator[](std::string_view name) const {
    const auto field = fields.find(name);
    return field == fields.end() ? std::string() : field->second;
  }
};

/// Hands over each row of this name below the root, in order.
void for_each_row(const Document& list, std::string_view name,
                  const std::function<void(const Row&)>& take);

/// A list to be written: the root with its namespace, its version 1, and the rows.
struct RowList {
  std::string root;
  std::string name_space;
  std::string row;  ///< the name of each
  std::vector<std::vector<std::pair<std::string, std::string>>> rows;
};
/// The file, indented by two; ends with a line break.
[[nodiscard]] std::string written(const RowList& list);

}  // namespace winchbook::xml
