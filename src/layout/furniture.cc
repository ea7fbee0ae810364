#include "layout/furniture.h"

#include <algorithm>
#include <iterator>
#include <string>
#include <string_view>
#include <utility>

#include "layout/set_words.h"
#include "layout/shapes.h"

namespace winchbook::layout {
namespace {

using base::points;
using document::Ledger;
using document::Role;

constexpr Length kUnderFrame = points(35.5);
constexpr Length kDeferAbove = points(12);  // over the line of the number and the code
constexpr Length kEdgeGap = points(23);
constexpr Length kEdgeWidth = points(6);
constexpr Length kBoxWidth = points(5);
constexpr Length kBoxHeight = points(14);
constexpr Length kBoxPitch = points(22);

std::string replaced(std::string words, std::string_view place, std::string_view with) {
  const std::size_t at = words.find(place);
  if (at != std::string::npos) words.replace(at, place.size(), with);
  return words;
}

Length width_of(const std::string& words, const Setting& setting) {
  return inline_text(document::plain(words), Role::folio, kArtifact, setting).right;
}

/// A name too long for the foot is cut after a word.
std::string cut_to(const std::string& name, Length room, const Setting& setting) {
  if (width_of(name, setting) <= room) return name;
  std::string shorter = name;
  while (true) {
    const std::size_t space = shorter.rfind(' ');
    if (space != std::string::npos) {
      shorter.resize(space);
    } else {
      // One long word: letter by letter, whole characters of UTF-8.
      while (!shorter.empty() && (static_cast<unsigned char>(shorter.back()) & 0xC0U) == 0x80U)
        shorter.pop_back();
      if (!shorter.empty()) shorter.pop_back();
      if (shorter.empty()) return "\u2026";
    }
    if (width_of(shorter + "\u2026", setting) <= room) return shorter + "\u2026";
  }
}

void put(const std::string& words, Point baseline, const Setting& setting, Page& page) {
  const InlineText line = inline_text(document::plain(words), Role::folio, kArtifact, setting);
  for (const SetLine& set : set_lines(line, {setting.style.frame_width()}, setting))
    place({{}, {}, set.items}, baseline, page.items);
}

void add_folio(const document::Folio& folio, std::size_t number, std::size_t count,
               const Setting& setting, Page& page) {
  const document::Style& style = setting.style;
  const Length y = page.height - style.paper.foot + kUnderFrame;
  const std::string numbered = replaced(replaced(folio.page_of, "{page}", std::to_string(number)),
                                        "{pages}", std::to_string(count));
  const Length main = style.paper.left + style.side + style.gutter;
  const Length code = width_of(folio.code, setting);
  put(numbered, {style.paper.left, y}, setting, page);
  put(cut_to(folio.name, style.main - code - style.gutter, setting), {main, y}, setting, page);
  put(folio.code, {main + style.main - code, y}, setting, page);
}

bool belongs_to_caution(TagId tag, const std::vector<Tag>& tags) {
  for (; tag != kArtifact; tag = tags[static_cast<std::size_t>(tag)].parent) {
    if (tags[static_cast<std::size_t>(tag)].caution) return true;
  }
  return false;
}

bool bears_caution(const Page& page, const std::vector<Tag>& tags) {
  return std::any_of(page.items.begin(), page.items.end(), [&](const Item& item) {
    const auto* text = std::get_if<TextItem>(&item);
    return text != nullptr && belongs_to_caution(text->tag, tags);
  });
}

/// What every caution of the page leaves unsaid.
void add_defer(const std::string& words, const Setting& setting, Page& page) {
  const document::Style& style = setting.style;
  const Length y = page.height - style.paper.foot + kUnderFrame - kDeferAbove;
  put(words, {style.paper.left + style.side + style.gutter, y}, setting, page);
}

void add_edge_mark(const LedgerStretch& stretch, const Setting& setting, Page& page) {
  const document::Paper& paper = setting.style.paper;
  const Length left = paper.left + setting.style.frame_width() + kEdgeGap;
  const Length top = paper.top + stretch.top;
  if (stretch.ledger == Ledger::first) {
    page.items.emplace_back(filled_box({left, top, kEdgeWidth, stretch.foot - stretch.top},
                                       setting.style.ink, kArtifact));
  }
  if (stretch.ledger != Ledger::second) return;
  const Stroke stroke{points(1), setting.style.ink};
  for (Length y = top; y + kBoxHeight <= paper.top + stretch.foot; y += kBoxPitch) {
    page.items.emplace_back(outlined_box(
        {left + (kEdgeWidth - kBoxWidth) / 2, y, kBoxWidth, kBoxHeight}, stroke, kArtifact));
  }
}

}  // namespace

void add_furniture(const document::Document& document, const PagesFilled& filled,
                   const Setting& setting, Pages& pages) {
  for (const LedgerStretch& stretch : filled.ledgers)
    add_edge_mark(stretch, setting, pages.pages[stretch.page]);
  const bool bare_cover = document.cover && !document.cover->compact;
  std::size_t first = 0;
  for (std::size_t i = 0; i < pages.pages.size(); ++i) {
    Page& page = pages.pages[i];
    const auto next = std::upper_bound(filled.copies.begin(), filled.copies.end(), i);
    if (next != filled.copies.begin()) first = *std::prev(next);
    const std::size_t end = next == filled.copies.end() ? pages.pages.size() : *next;
    if (i == 0 && bare_cover) continue;
    if (!document.folio.defer.empty() && bears_caution(page, setting.tags))
      add_defer(document.folio.defer, setting, page);
    add_folio(document.folio, i - first + 1, end - first, setting, page);
  }
}

}  // namespace winchbook::layout
