#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include "document/document.h"

/// A document for a terminal: the words alone, in the order in which they are read.
namespace winchbook::plain {

/// Prints it in lines of at most `width` columns (a longer word stands alone); without a width each
/// paragraph, item and row is one line. Subheads are ruled, items and side notes indented, the
/// columns of a table aligned: words at the left, numbers at the right; a row that is too wide is
/// broken as a paragraph is. A no-break space holds words together and is printed as a space.
/// Photographs and charts are told by the words that stand for them. Ends with a line break; a
/// column is a Unicode scalar value.
[[nodiscard]] std::string print(const document::Document& document,
                                std::optional<std::size_t> width = std::nullopt);

}  // namespace winchbook::plain
