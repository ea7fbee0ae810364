#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <string>

#include "layout/lay_out.h"

namespace winchbook::layout {
namespace {

constexpr std::array<const char*, 23> kTagNames = {
    "Document", "Part", "Sect",      "H1",   "H2",   "H3",    "P",     "Caption",
    "Figure",   "Note", "Reference", "Link", "Span", "Table", "THead", "TBody",
    "TR",       "TH",   "TD",        "L",    "LI",   "Lbl",   "LBody"};
static_assert(kTagNames.size() == static_cast<std::size_t>(TagType::list_body) + 1);

/// "12.500": thousandths are printed as they are kept.
std::string number(Length length) {
  const std::int32_t value = length.thousandths;
  const std::uint32_t size =
      value < 0 ? 0U - static_cast<std::uint32_t>(value) : static_cast<std::uint32_t>(value);
  return fmt::format("{}{}.{:03}", value < 0 ? "-" : "", size / 1000, size % 1000);
}

std::string box_text(Rect box) {
  return fmt::format("{} {} {} {}", number(box.x), number(box.y), number(box.width),
                     number(box.height));
}

std::string colour_text(Colour colour) {
  return fmt::format("#{:02X}{:02X}{:02X}", colour.red, colour.green, colour.blue);
}

/// Text between quotation marks, its own and line feeds escaped.
std::string quoted(const std::string& text) {
  std::string out = "\"";
  for (const char character : text) {
    if (character == '"' || character == '\\') out += '\\';
    out += character == '\n' ? ' ' : character;
  }
  return out + '"';
}

struct ItemLine {
  const std::vector<Tag>& tags;
  std::size_t page;

  [[nodiscard]] std::string tag_text(TagId tag) const {
    if (tag < 0) return "artifact";
    const auto type = static_cast<std::size_t>(tags[static_cast<std::size_t>(tag)].type);
    return fmt::format("{}:{}", kTagNames[type], tag);
  }

  std::string operator()(const TextItem& item) const {
    std::string line =
        fmt::format("text {} {} {} {} {} {} {}", page, number(item.origin.x), number(item.origin.y),
                    tag_text(item.tag), item.face, number(item.size), colour_text(item.colour));
    if (item.tracking != 0) line += fmt::format(" tracking={}", item.tracking);
    line += ' ' + quoted(item.text);
    if (!item.actual_text.empty()) line += " actual=" + quoted(item.actual_text);
    return line;
  }
  std::string operator()(const PathItem& item) const {
    std::string line = fmt::format("path {}", page);
    const auto first = std::find_if(item.steps.begin(), item.steps.end(), [](const auto& step) {
      return step.kind != PathItem::Step::Kind::close;
    });
    const Point from = first == item.steps.end() ? Point{} : first->to;
    line += fmt::format(" {} {} {}", number(from.x), number(from.y), tag_text(item.tag));
    if (item.filled) line += " fill=" + colour_text(item.fill);
    if (item.stroked) {
      line +=
          fmt::format(" stroke={},{}", number(item.stroke.width), colour_text(item.stroke.colour));
      for (const Length dash : item.stroke.dashes)
        line += ',' + number(dash);
    }
    for (const PathItem::Step& step : item.steps) {
      switch (step.kind) {
        case PathItem::Step::Kind::move:
          line += fmt::format(" M{},{}", number(step.to.x), number(step.to.y));
          break;
        case PathItem::Step::Kind::line:
          line += fmt::format(" L{},{}", number(step.to.x), number(step.to.y));
          break;
        case PathItem::Step::Kind::curve:
          line += fmt::format(" C{},{}", number(step.to.x), number(step.to.y));
          break;
        case PathItem::Step::Kind::close:
          line += " Z";
          break;
      }
    }
    return line;
  }
  std::string operator()(const ImageItem& item) const {
    return fmt::format("image {} {} {} {}", page, box_text(item.box), tag_text(item.tag),
                       quoted(item.photograph));
  }
  std::string operator()(const LinkItem& item) const {
    return fmt::format("link {} {} {} {} {}", page, box_text(item.box), tag_text(item.tag),
                       quoted(item.target), quoted(item.words));
  }
};

}  // namespace

std::string dump(const Pages& pages) {
  std::string out;
  for (std::size_t i = 0; i < pages.pages.size(); ++i) {
    const Page& page = pages.pages[i];
    out += fmt::format("page {} {} {}\n", i + 1, number(page.width), number(page.height));
    for (const Item& item : page.items)
      out += std::visit(ItemLine{pages.tags, i + 1}, item) + '\n';
  }
  for (const auto& [name, anchor] : pages.anchors)
    out += fmt::format("anchor {} {} {}\n", anchor.page + 1, number(anchor.y), quoted(name));
  for (const Bookmark& mark : pages.bookmarks) {
    out += fmt::format("bookmark {} {} {} {}\n", mark.to.page + 1, number(mark.to.y), mark.level,
                       quoted(mark.words));
  }
  return out;
}

}  // namespace winchbook::layout
