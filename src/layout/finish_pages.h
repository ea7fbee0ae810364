#pragma once

#include <string>

#include "base/diagnostic.h"
#include "layout/page.h"
#include "text/shape.h"

/// What can only be said of finished pages.
namespace winchbook::layout {

/// Gives every figure its page and the box round all of its items.
void locate_figures(Pages& pages, const text::FontMetrics& fonts);

/// A link whose anchor stands nowhere becomes plain words.
void drop_dangling_links(Pages& pages);

/// One error for each character that none of the faces has, with the words it stands in; 100 at
/// most.
[[nodiscard]] base::Diagnostics missing_characters(const Pages& pages);

}  // namespace winchbook::layout
