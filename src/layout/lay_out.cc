#include "layout/lay_out.h"

#include <utility>

#include "layout/finish_pages.h"
#include "layout/furniture.h"
#include "layout/page_flow.h"
#include "layout/set_chapter.h"
#include "layout/set_cover.h"

namespace winchbook::layout {

base::Result<Pages> lay_out(const document::Document& document, const document::Style& style,
                            const text::FontMetrics& fonts) {
  Pages pages;
  std::vector<Tag> tags;
  const Setting setting{style, fonts, document.language, tags};
  const TagId root = setting.add_tag({.type = TagType::document});
  PageFlow flow(setting, pages);

  if (document.cover) {
    const TagId section = setting.add_tag({.type = TagType::section, .parent = root});
    const Length height = style.paper.height - style.paper.top - style.paper.foot;
    flow.place_cover(set_cover(*document.cover, height, section, setting), document.cover->compact);
  }
  const TagType title = document.cover ? TagType::h2 : TagType::h1;
  std::vector<std::size_t> copies;  // the first page of each that is counted by itself
  for (const document::Chapter& chapter : document.chapters) {
    flow.finish();
    if (chapter.counted_apart) copies.push_back(pages.pages.size());
    SetChapter set = set_chapter(chapter, title, root, setting);
    flow.place_chapter(set.furniture, std::move(set.slices));
  }
  flow.finish();
  add_furniture(document, {flow.ledgers(), copies}, setting, pages);

  // From here on every position is fixed.
  pages.tags = std::move(tags);
  if (!document.cover) {
    for (Tag& tag : pages.tags) {
      if (tag.type == TagType::h3) tag.type = TagType::h2;
    }
  }
  locate_figures(pages, fonts);
  drop_dangling_links(pages);
  base::Diagnostics faults = missing_characters(pages);
  if (!faults.empty()) return faults;
  return pages;
}

}  // namespace winchbook::layout
