#include <doctest/doctest.h>

#include "laid_out.h"

namespace winchbook::layout {
namespace {

/// Lacks snowmen everywhere, and Greek in all faces but one.
class Sparse : public fake::Font {
 public:
  [[nodiscard]] bool has(text::FaceId face, char32_t character) const override {
    if (character == 0x2603 || character >= 0x4E00) return false;
    return character < 0x370 || character > 0x3FF || face == this->face("sans");
  }
  [[nodiscard]] text::Shaped shape(text::FaceId face, std::string_view utf8,
                                   std::span<const std::string> features,
                                   std::string_view language) const override {
    text::Shaped shaped = fake::Font::shape(face, utf8, features, language);
    for (text::Glyph& glyph : shaped.glyphs) {
      // Of the characters used here only those lacking begin with these bytes.
      const auto byte = static_cast<unsigned char>(utf8[glyph.cluster]);
      const bool greek = byte == 0xCE || byte == 0xCF;
      if (byte >= 0xE2 || (greek && face != this->face("sans"))) glyph.id = 0;
    }
    return shaped;
  }
};

base::Result<Pages> set(const std::string& words, const document::Style& style) {
  const Sparse fonts;
  document::Paragraph paragraph;
  paragraph.words = document::plain(words);
  return lay_out(laid::one_chapter({paragraph}), style, fonts);
}

}  // namespace

TEST_CASE("a character that no face has is named, with the words round it") {
  document::Style style = fake::style();
  style.fallback = {"sans"};
  const auto result = set("a ☃ by the landing, and one more ☃", style);
  REQUIRE_FALSE(result);
  REQUIRE(result.faults().size() == 1);
  CHECK(result.faults()[0].message ==
        "no face has the character U+2603 \"☃\" in \"a ☃ by the landing, and \"");
  CHECK(result.faults()[0].rule == "missing-glyph");
}

TEST_CASE("a face that lacks a character hands it to the next in order") {
  document::Style style = fake::style();
  CHECK_FALSE(set("the λόγος of it", style));
  style.fallback = {"text-bold", "sans"};
  const auto result = set("the λόγος of it", style);
  REQUIRE(result);
  const Sparse fonts;
  std::vector<std::pair<std::string, text::FaceId>> pieces;
  for (const Item& item : result->pages[0].items) {
    const auto* text = std::get_if<TextItem>(&item);
    if (text != nullptr && text->size == base::points(11)) {
      pieces.emplace_back(text->text, text->face);
    }
  }
  REQUIRE(pieces.size() == 3);
  CHECK(pieces[0].first == "the ");
  CHECK(pieces[1].first == "λόγος");
  CHECK(pieces[1].second == fonts.face("sans"));
}

TEST_CASE("each character is told once, and a hundred at most") {
  std::string words;
  for (int i = 0; i < 150; ++i) {
    const int code = 0x4E00 + i;
    words += static_cast<char>(0xE0 | (code >> 12));
    words += static_cast<char>(0x80 | ((code >> 6) & 0x3F));
    words += static_cast<char>(0x80 | (code & 0x3F));
  }
  const auto result = set(words + words, fake::style());
  REQUIRE_FALSE(result);
  CHECK(result.faults().size() == 100);
}

}  // namespace winchbook::layout
