#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "xml/edit.h"

namespace winchbook::daybook {

/// The lines that splices change, with two lines before and after each place: "-" before a line
/// that goes, "+" before one that comes, "@@ line 41 @@" above each place (of the old file).
[[nodiscard]] std::string difference(std::string_view bytes, std::vector<xml::Splice> splices);

/// The same between two texts that differ in one stretch.
[[nodiscard]] std::string difference(std::string_view before, std::string_view after);

}  // namespace winchbook::daybook
