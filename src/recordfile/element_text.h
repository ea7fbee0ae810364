#pragma once

#include <string>
#include <string_view>

#include "xml/document.h"

namespace winchbook::recordfile {

/// How a file sets its lines.
struct Layout {
  std::string_view line_end;  ///< "\n" or "\r\n"
  std::string indent;         ///< of one level
};

/// An element of the tree as it is written: on one line while it is short, else its children on
/// lines of their own, `indentation` deep. Text is never broken.
[[nodiscard]] std::string written(pugi::xml_node element, const Layout& layout,
                                  const std::string& indentation);

/// The same on one line, however long.
[[nodiscard]] std::string written_on_one_line(pugi::xml_node element);

/// What stands between its tags when it is written so; begins and ends with its line breaks.
[[nodiscard]] std::string written_inside(pugi::xml_node element, const Layout& layout,
                                         const std::string& indentation);

}  // namespace winchbook::recordfile
