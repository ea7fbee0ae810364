#pragma once

#include <string>
#include <vector>

#include "layout/page.h"
#include "pdf/haru.h"
#include "pdf/structure.h"

/// Ways through the file: bookmarks, page labels, places to click.
namespace winchbook::pdf {

/// "[5 0 R/XYZ 0 700 null]": the page with `anchor` at the top, at the reader's own magnification.
[[nodiscard]] std::string destination(const layout::Anchor& anchor, const layout::Pages& pages,
                                      const std::vector<PageObject>& page_objects);

/// The link annotations of page number `page`. Error: a target "#…" that no anchor answers, or a
/// link without a structure element.
[[nodiscard]] base::Diagnostics add_links(int page, const layout::Pages& pages,
                                          const std::vector<PageObject>& page_objects,
                                          Structure& structure, Haru& haru);

/// The bookmarks, nested by level, all closed below the first level.
void add_outline(const layout::Pages& pages, const std::vector<PageObject>& page_objects,
                 Haru& haru);

}  // namespace winchbook::pdf
