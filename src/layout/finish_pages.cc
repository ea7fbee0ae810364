#include "layout/finish_pages.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <utility>

#include "layout/characters.h"
#include "layout/frame.h"
#include "layout/slice.h"

namespace winchbook::layout {
namespace {

constexpr std::size_t kMostDiagnostics = 100;
constexpr std::size_t kAround = 24;  // bytes of context on either side

Rect joined(Rect a, Rect b) {
  const Length left = std::min(a.x, b.x);
  const Length top = std::min(a.y, b.y);
  return {left, top, std::max(a.x + a.width, b.x + b.width) - left,
          std::max(a.y + a.height, b.y + b.height) - top};
}

Rect box_of(const Item& item, const text::FontMetrics& fonts) {
  Rect box = extent(item);
  if (const auto* text = std::get_if<TextItem>(&item)) box.width = width_of(*text, fonts);
  return box;
}

/// The figure an item belongs to, itself or through the tags above it.
TagId figure_of(TagId tag, const std::vector<Tag>& tags) {
  while (tag >= 0) {
    const Tag& here = tags[static_cast<std::size_t>(tag)];
    if (here.type == TagType::figure) return tag;
    tag = here.parent;
  }
  return kArtifact;
}

/// Moves `at` to the beginning of the character it is inside of.
std::size_t character_start(const std::string& text, std::size_t at) {
  while (at > 0 && at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0U) == 0x80U)
    --at;
  return at;
}

std::string words_around(const std::string& text, std::size_t at) {
  const std::size_t begin = character_start(text, at > kAround ? at - kAround : 0);
  const std::size_t end = character_start(text, std::min(text.size(), at + kAround));
  return text.substr(begin, end - begin);
}

}  // namespace

void locate_figures(Pages& pages, const text::FontMetrics& fonts) {
  for (std::size_t i = 0; i < pages.pages.size(); ++i) {
    for (const Item& item : pages.pages[i].items) {
      const TagId tag = std::visit([](const auto& one) { return one.tag; }, item);
      const TagId figure = figure_of(tag, pages.tags);
      if (figure == kArtifact) continue;
      Tag& told = pages.tags[static_cast<std::size_t>(figure)];
      const Rect box = box_of(item, fonts);
      told.box = told.page < 0 ? box : joined(told.box, box);
      told.page = static_cast<int>(i);
    }
  }
}

void drop_dangling_links(Pages& pages) {
  for (Page& page : pages.pages) {
    std::erase_if(page.items, [&](const Item& item) {
      const auto* link = std::get_if<LinkItem>(&item);
      if (link == nullptr || !link->target.starts_with('#')) return false;
      if (pages.anchors.contains(link->target.substr(1))) return false;
      if (link->tag >= 0) pages.tags[static_cast<std::size_t>(link->tag)].type = TagType::span;
      return true;
    });
  }
}

base::Diagnostics missing_characters(const Pages& pages) {
  base::Diagnostics faults;
  std::set<char32_t> told;
  for (const Page& page : pages.pages) {
    for (const Item& item : page.items) {
      const auto* text = std::get_if<TextItem>(&item);
      if (text == nullptr) continue;
      for (const text::Glyph& glyph : text->glyphs) {
        if (glyph.id != 0 || glyph.cluster >= text->text.size()) continue;
        std::size_t end = glyph.cluster;
        const char32_t character = next_character(text->text, end);
        if (leaves_no_mark(character) || !told.insert(character).second) continue;
        if (faults.size() == kMostDiagnostics) return faults;
        faults.push_back(base::error(
            fmt::format("no face has the character U+{:04X} \"{}\" in \"{}\"",
                        static_cast<std::uint32_t>(character),
                        text->text.substr(glyph.cluster, end - glyph.cluster),
                        words_around(text->text, glyph.cluster)),
            "write it another way, or add a face that has it to the template's fallback faces",
            "missing-glyph"));
      }
    }
  }
  return faults;
}

}  // namespace winchbook::layout
