#include "pdf/embedded_font.h"

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <hb.h>

#include <array>
#include <memory>
#include <string>
#include <string_view>

#include "pdf/opened_pdf.h"
#include "pdf/sample.h"

namespace winchbook::pdf {
namespace {

/// A glyph's outline as text: "M10 20 L…".
std::string outline(hb_face_t* face, hb_codepoint_t glyph) {
  const std::unique_ptr<hb_font_t, void (*)(hb_font_t*)> font(hb_font_create(face),
                                                              hb_font_destroy);
  const std::unique_ptr<hb_draw_funcs_t, void (*)(hb_draw_funcs_t*)> draw(hb_draw_funcs_create(),
                                                                          hb_draw_funcs_destroy);
  const auto put = [](void* out, char step, std::initializer_list<float> numbers) {
    *static_cast<std::string*>(out) += step;
    for (const float number : numbers)
      *static_cast<std::string*>(out) += fmt::format("{} ", number);
  };
  static const auto append = put;
  hb_draw_funcs_set_move_to_func(
      draw.get(),
      [](hb_draw_funcs_t*, void* out, hb_draw_state_t*, float x, float y, void*) {
        append(out, 'M', {x, y});
      },
      nullptr, nullptr);
  hb_draw_funcs_set_line_to_func(
      draw.get(),
      [](hb_draw_funcs_t*, void* out, hb_draw_state_t*, float x, float y, void*) {
        append(out, 'L', {x, y});
      },
      nullptr, nullptr);
  hb_draw_funcs_set_quadratic_to_func(
      draw.get(),
      [](hb_draw_funcs_t*, void* out, hb_draw_state_t*, float cx, float cy, float x, float y,
         void*) {
        append(out, 'Q', {cx, cy, x, y});
      },
      nullptr, nullptr);
  std::string out;
  hb_font_get_glyph_shape(font.get(), glyph, draw.get(), &out);
  return out;
}

using Face = std::unique_ptr<hb_face_t, void (*)(hb_face_t*)>;

/// `bytes` have to outlive it.
Face face_of(const std::string& bytes) {
  hb_blob_t* blob = hb_blob_create(bytes.data(), static_cast<unsigned>(bytes.size()),
                                   HB_MEMORY_MODE_READONLY, nullptr, nullptr);
  Face face(hb_face_create(blob, 0), hb_face_destroy);
  hb_blob_destroy(blob);
  return face;
}

struct Embedded {
  std::string font_file;
  std::string glyph_map;

  [[nodiscard]] unsigned glyph(unsigned code) const {
    return static_cast<unsigned char>(glyph_map[2 * code]) << 8U |
           static_cast<unsigned char>(glyph_map[2 * code + 1]);
  }
};

// Letters whose accents are composites of composites in Vollkorn: a subsetter that follows only one
// level drops them, and no validator notices.
TEST_CASE("a subset keeps the parts of nested composite glyphs") {
  const text::FontBook fonts = sample::font_book();
  layout::Pages pages;
  sample::Book book(pages, fonts);
  book.add_page();
  const auto document = book.add_tag(layout::TagType::document, layout::kArtifact);
  const std::string_view words = "ÄÖÜ½¼¾йЁé";
  const layout::TextItem item = book.text(words, {}, book.add_tag(layout::TagType::h1, document));
  book.add(item);
  const OpenedPdf pdf(draw(pages, sample::contents(), fonts).value());

  Embedded embedded;
  embedded.font_file = pdf.stream("/Length1 ");
  const std::string cid_font = pdf.find("/CIDToGIDMap");
  const auto map_at = cid_font.find("/CIDToGIDMap ") + 13;
  embedded.glyph_map = pdf.stream_number(std::stoi(cid_font.substr(map_at)));
  REQUIRE(embedded.glyph_map.size() == 2 * (item.glyphs.size() + 1));

  const Face subset = face_of(embedded.font_file);
  const std::string vollkorn =
      sample::bytes_of("/usr/share/fonts/truetype/vollkorn/Vollkorn-Regular.ttf");
  const Face whole_face = face_of(vollkorn);
  for (unsigned i = 0; i < item.glyphs.size(); ++i) {
    CAPTURE(i);
    const std::string whole = outline(whole_face.get(), item.glyphs[i].id);
    CHECK(whole.size() > 100);
    CHECK(outline(subset.get(), embedded.glyph(i + 1)) == whole);
  }
  CHECK(embedded.font_file.size() < 12'000);
}

TEST_CASE("one text keeps one code, another text of the same glyph gets its own") {
  const text::FontBook fonts = sample::font_book();
  Haru haru;
  EmbeddedFont font(fonts, fonts.face("lato-regular"), "F0", haru);
  const auto space = font.show(3, " ");
  CHECK(space.code == 1);
  CHECK(font.show(3, "\u00A0").code == 2);
  CHECK(font.show(4, "x").code == 3);
  CHECK(font.show(3, " ").code == 1);
  CHECK(font.show(3, "\u00A0").code == 2);
}

// Lato has 2,000 units to the em: half thousandths must not be rounded away.
TEST_CASE("widths are the font's, to a thousandth of a thousandth") {
  const text::FontBook fonts = sample::font_book();
  const text::FaceId lato = fonts.face("lato-regular");
  Haru haru;
  EmbeddedFont font(fonts, lato, "F0", haru);
  const text::Shaped m = fonts.shape(lato, "m", {}, "en-GB");
  CHECK(font.show(m.glyphs[0].id, "m").width == m.width * 500);
}

}  // namespace
}  // namespace winchbook::pdf
