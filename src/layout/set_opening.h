#pragma once

#include "layout/page_flow.h"

namespace winchbook::layout {

/// Rule, eyebrow, title and stand-first over the whole frame: 60 high, 90 with a one-line
/// stand-first, 105 with two. A title longer than three lines takes the next smaller size, and the
/// last size as many lines as it needs.
[[nodiscard]] Slice set_opening(const document::Chapter& chapter, TagType level, TagId section,
                                const Setting& setting);

/// What its pages after the first repeat.
[[nodiscard]] ChapterFurniture chapter_furniture(const document::Chapter& chapter,
                                                 const Setting& setting);

}  // namespace winchbook::layout
