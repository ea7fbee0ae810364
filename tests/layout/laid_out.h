#pragma once

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "document/document.h"
#include "layout/frame.h"
#include "layout/lay_out.h"
#include "layout/slice.h"
#include "support/fake_font.h"

/// Documents in the made-up font, laid out, and what can be read off their pages.
namespace winchbook::laid {

using base::Length;
using base::points;
using base::to_points;
using layout::Pages;

inline document::Style letter() {
  document::Style style = fake::style();
  style.paper = {points(612), points(792), points(78), points(99), points(70.5), points(70.5)};
  return style;
}

inline Pages pages(const document::Document& document,
                   const document::Style& style = fake::style()) {
  const fake::Font fonts;
  auto result = layout::lay_out(document, style, fonts);
  REQUIRE(result);
  return std::move(result).value();
}

inline document::Document one_chapter(std::vector<document::Block> blocks) {
  document::Document document;
  document.title = "Sample";
  document.language = "en-GB";
  document::Chapter chapter;
  chapter.id = "chapter";
  chapter.title = "Title";
  chapter.blocks = std::move(blocks);
  document.chapters.push_back(std::move(chapter));
  return document;
}

/// `count` words of `letters` letters.
inline std::string words(int count, int letters = 4, char letter = 'a') {
  std::string text;
  for (int i = 0; i < count; ++i) {
    if (i > 0) text += ' ';
    text += std::string(static_cast<std::size_t>(letters), letter);
  }
  return text;
}

/// A paragraph of so many lines of reading text: 11 words of 4 letters fill 309 points at 5.5 each.
inline document::Paragraph lines(int count, char letter = 'a') {
  document::Paragraph paragraph;
  paragraph.manner = document::ParagraphManner::unindented;
  paragraph.words = document::plain(words(11 * count, 4, letter));
  return paragraph;
}

struct Seen {
  int page = 0;
  double x = 0;
  double y = 0;  ///< baseline
  double right = 0;
  double size = 0;
  std::string text;
  layout::TagId tag = layout::kArtifact;
};

/// Every piece of text in drawing order, trailing spaces off.
inline std::vector<Seen> seen(const Pages& pages) {
  const fake::Font fonts;
  std::vector<Seen> all;
  for (std::size_t i = 0; i < pages.pages.size(); ++i) {
    for (const layout::Item& item : pages.pages[i].items) {
      const auto* text = std::get_if<layout::TextItem>(&item);
      if (text == nullptr) continue;
      const double x = to_points(text->origin.x);
      Seen one{static_cast<int>(i),
               x,
               to_points(text->origin.y),
               x + to_points(layout::seen_width_of(*text, fonts)),
               to_points(text->size),
               text->text,
               text->tag};
      while (!one.text.empty() && one.text.back() == ' ')
        one.text.pop_back();
      all.push_back(std::move(one));
    }
  }
  return all;
}

/// The pieces that begin so.
inline std::vector<Seen> find(const Pages& pages, std::string_view beginning) {
  std::vector<Seen> found;
  for (Seen& one : seen(pages)) {
    if (one.text.starts_with(beginning)) found.push_back(std::move(one));
  }
  return found;
}

/// How many lines of text with this first letter each page has.
inline std::map<int, int> lines_on_pages(const Pages& pages, char letter) {
  std::map<int, int> lines;
  for (const Seen& one : find(pages, std::string(4, letter)))
    ++lines[one.page];
  return lines;
}

}  // namespace winchbook::laid
