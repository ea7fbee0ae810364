#pragma once

#include <fstream>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

#include "base/length.h"
#include "layout/page.h"
#include "pdf/draw.h"
#include "text/font_book.h"

/// Pages made by hand, to be drawn.
namespace winchbook::pdf::sample {

using base::points;
using layout::TagId;
using layout::TagType;

inline std::string bytes_of(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

inline text::FontBook font_book() {
  const std::string list = bytes_of(WINCHBOOK_SOURCE_DIR "/shared/fonts.txt");
  return text::FontBook(text::read_fonts_list(list, "fonts.txt").value());
}

inline Contents contents() {
  Contents out;
  out.metadata = {"Skerry No. 40: keepsake",
                  "The Lantern Bench",
                  "A record of what was found & done",
                  "en-GB",
                  "2026-06-19",
                  "winchbook 0.1.0"};
  out.icc_profile = bytes_of("/usr/share/color/icc/sRGB.icc");
  out.attachments.push_back(
      {"record.xml", "text/xml", "the record this document was made from", "<reel-record/>\n"});
  return out;
}

/// A book of pages under construction.
class Book {
 public:
  Book(layout::Pages& pages, const text::FontBook& fonts) : pages_(pages), fonts_(fonts) {}

  int add_page() {
    pages_.pages.push_back({points(595.28), points(841.89), {}});
    return static_cast<int>(pages_.pages.size()) - 1;
  }
  TagId add_tag(TagType type, TagId parent) {
    pages_.tags.push_back({.type = type, .parent = parent});
    return static_cast<TagId>(pages_.tags.size()) - 1;
  }
  layout::Tag& tag(TagId id) { return pages_.tags[static_cast<std::size_t>(id)]; }
  void add(layout::Item item) { pages_.pages.back().items.push_back(std::move(item)); }

  layout::TextItem text(std::string_view words, base::Point origin, TagId tag,
                        std::string_view face = "vollkorn-regular", double size = 11,
                        std::vector<std::string> features = {}) const {
    const text::FaceId id = fonts_.face(face);
    text::Shaped shaped = fonts_.shape(id, words, features, "en-GB");
    layout::TextItem item;
    item.origin = origin;
    item.face = id;
    item.size = points(size);
    item.colour = {26, 26, 26};
    item.glyphs = std::move(shaped.glyphs);
    item.text = std::move(shaped.text);
    item.tag = tag;
    return item;
  }
  void write(std::string_view words, double x, double y, TagId tag,
             std::string_view face = "vollkorn-regular", double size = 11,
             std::vector<std::string> features = {}) {
    add(text(words, {points(x), points(y)}, tag, face, size, std::move(features)));
  }

 private:
  layout::Pages& pages_;
  const text::FontBook& fonts_;
};

/// A closed rectangle.
inline layout::PathItem rectangle(double x, double y, double width, double height, TagId tag) {
  using Kind = layout::PathItem::Step::Kind;
  const auto at = [](double px, double py) { return base::Point{points(px), points(py)}; };
  layout::PathItem path;
  path.steps = {{Kind::move, at(x, y)},
                {Kind::line, at(x + width, y)},
                {Kind::line, at(x + width, y + height)},
                {Kind::line, at(x, y + height)},
                {Kind::close}};
  path.filled = true;
  path.fill = {123, 45, 34};
  path.tag = tag;
  return path;
}

}  // namespace winchbook::pdf::sample
