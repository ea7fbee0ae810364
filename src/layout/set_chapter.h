#pragma once

#include "layout/page_flow.h"

namespace winchbook::layout {

struct SetChapter {
  ChapterFurniture furniture;
  Slices slices;
};

/// Opening and blocks of a chapter under its own section tag. `title_level` is its heading's.
[[nodiscard]] SetChapter set_chapter(const document::Chapter& chapter, TagType title_level,
                                     TagId parent, const Setting& setting);

}  // namespace winchbook::layout
