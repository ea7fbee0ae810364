#pragma once

#include <string>

#include "base/result.h"
#include "document/document.h"
#include "document/style.h"
#include "layout/page.h"
#include "text/shape.h"

namespace winchbook::layout {

/// Gives every word, rule and picture of the document its place. Pages are full in reading order;
/// "n of N" is a second pass over the finished pages. Errors: a character that none of the faces
/// has (one diagnostic a character, with its name and the words it stands in).
[[nodiscard]] base::Result<Pages> lay_out(const document::Document& document,
                                          const document::Style& style,
                                          const text::FontMetrics& fonts);

/// Pages as text, a line an item, for golden files and for programs that need positions.
[[nodiscard]] std::string dump(const Pages& pages);

}  // namespace winchbook::layout
