#include "pdf/text_run.h"

#include <doctest/doctest.h>

#include <string>

#include "pdf/sample.h"

namespace winchbook::pdf {
namespace {

using namespace std::string_literals;

/// Vollkorn, whose em is 1000 units; its A, of glyph `id`, is `width` wide.
struct Fixture {
  text::FontBook fonts = sample::font_book();
  Haru haru;
  EmbeddedFont font{fonts, fonts.face("vollkorn-regular"), "F0", haru};
  std::uint32_t id = 0;
  std::int32_t width = 0;

  Fixture() {
    const text::Shaped a = fonts.shape(fonts.face("vollkorn-regular"), "A", {}, "en-GB");
    id = a.glyphs[0].id;
    width = a.glyphs[0].advance;
  }
  std::string run(std::vector<text::Glyph> glyphs, std::string words) {
    layout::TextItem item;
    item.size = base::points(10);
    item.glyphs = std::move(glyphs);
    item.text = std::move(words);
    std::string out;
    append_run(item, font, out);
    return out;
  }
};

TEST_CASE("glyphs as wide as the font says need no correction") {
  Fixture f;
  CHECK(f.run({{f.id, f.width, 0, 0, 0}, {f.id, f.width, 0, 0, 1}}, "AA") == "[(\0\1\0\1)]TJ\n"s);
}

TEST_CASE("kerning moves the next glyph") {
  Fixture f;
  CHECK(f.run({{f.id, f.width - 80, 0, 0, 0}, {f.id, f.width, 0, 0, 1}}, "AA") ==
        "[(\0\1)80(\0\1)]TJ\n"s);
}

TEST_CASE("an offset moves one glyph and not the next") {
  Fixture f;
  CHECK(f.run({{f.id, f.width, 30, 0, 0}, {f.id, f.width, 0, 0, 1}}, "AA") ==
        "[-30(\0\1)30(\0\1)]TJ\n"s);
}

TEST_CASE("a glyph off the baseline rises, the next returns") {
  Fixture f;
  CHECK(f.run({{f.id, f.width, 0, 250, 0}, {f.id, f.width, 0, 0, 1}}, "AA") ==
        "[]TJ 2.5 Ts[(\0\1)]TJ 0 Ts[(\0\1)]TJ\n"s);
  CHECK(f.run({{f.id, f.width, 0, -250, 0}}, "A") == "[]TJ -2.5 Ts[(\0\1)]TJ\n0 Ts\n"s);
}

TEST_CASE("two glyphs for one character are read as that character") {
  Fixture f;
  CHECK(f.run({{f.id, f.width, 0, 0, 0}, {f.id, 0, 0, 0, 0}, {f.id, f.width, 0, 0, 2}}, "ÅA") ==
        "[]TJ/Span<</ActualText<FEFF00C5>>>BDC[(\0\1\0\2)]TJ EMC["s + std::to_string(f.width) +
            "(\0\3)]TJ\n"s);
}

TEST_CASE("a soft hyphen is not part of the letter before it") {
  Fixture f;
  // Both letters stand for "A" alone, so they share a code.
  CHECK(f.run({{f.id, f.width, 0, 0, 0}, {f.id, f.width, 0, 0, 3}}, "A\u00ADA") ==
        "[(\0\1\0\1)]TJ\n"s);
}

}  // namespace
}  // namespace winchbook::pdf
