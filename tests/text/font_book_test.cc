#include "text/font_book.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <set>
#include <stdexcept>
#include <string>

namespace winchbook::text {
namespace {

FontBook font_book() {
  std::ifstream file(WINCHBOOK_SOURCE_DIR "/shared/fonts.txt", std::ios::binary);
  const std::string list(std::istreambuf_iterator<char>(file), {});
  return FontBook(read_fonts_list(list, "fonts.txt").value());
}

Shaped shaped(const FontBook& fonts, std::string_view face, std::string_view text,
              const std::vector<std::string>& features = {}) {
  return fonts.shape(fonts.face(face), text, features, "en-GB");
}

TEST_CASE("every face of the fonts list opens") {
  std::ifstream file(WINCHBOOK_SOURCE_DIR "/shared/fonts.txt", std::ios::binary);
  const std::string list(std::istreambuf_iterator<char>(file), {});
  const auto entries = read_fonts_list(list, "fonts.txt").value();
  CHECK(entries.size() >= 12);
  const FontBook fonts(entries);
  for (const FaceEntry& entry : entries) {
    CAPTURE(entry.name);
    CHECK(fonts.knows(entry.name));
    CHECK(fonts.name(fonts.face(entry.name)) == entry.name);
    CHECK(fonts.metrics(fonts.face(entry.name)).ascender > 0);
    CHECK(fonts.metrics(fonts.face(entry.name)).descender < 0);
  }
  CHECK(fonts.faults().empty());
}

TEST_CASE("a face that is not in the list is a fault of the program") {
  CHECK_THROWS_AS((void)font_book().face("vollkorn-light"), std::out_of_range);
}

TEST_CASE("a missing file names the package that brings it") {
  const FontBook fonts({{"lost", "fonts-lost", {"/nowhere/lost.ttf", "/nowhere/else.ttf"}}});
  CHECK(fonts.faults().empty());
  CHECK_FALSE(fonts.has(0, U'a'));
  CHECK(fonts.shape(0, "a", {}, "en-GB").glyphs.empty());
  REQUIRE(fonts.faults().size() == 1);
  CHECK(base::to_string(fonts.faults().front()) ==
        "error: font \"lost\" is not there: no file /nowhere/lost.ttf [font-missing]\n"
        "  hint: install the package fonts-lost, or give another file for it in the fonts list\n");
}

TEST_CASE("a file that is no TrueType font is told apart from a missing one") {
  const FontBook fonts({{"text", "none", {WINCHBOOK_SOURCE_DIR "/shared/fonts.txt"}}});
  CHECK_FALSE(fonts.has(0, U'a'));
  REQUIRE(fonts.faults().size() == 1);
  CHECK(fonts.faults().front().rule == "font-kind");
}

TEST_CASE("the second place is tried when the first has nothing") {
  const FontBook fonts(
      {{"found",
        "fonts-vollkorn",
        {"/nowhere/lost.ttf", "/usr/share/fonts/truetype/vollkorn/Vollkorn-Regular.ttf"}}});
  CHECK(fonts.has(0, U'a'));
  CHECK(fonts.faults().empty());
}

TEST_CASE("a fonts list is read line by line") {
  const auto read = read_fonts_list("# faces\n\n a | p | /f.ttf | /g.ttf # here\n", "fonts.txt");
  REQUIRE(read);
  REQUIRE(read.value().size() == 1);
  CHECK(read.value()[0].name == "a");
  CHECK(read.value()[0].package == "p");
  CHECK(read.value()[0].files == std::vector<std::string>{"/f.ttf", "/g.ttf"});
}

TEST_CASE("a fonts list says what is wrong with it and where") {
  const auto read = read_fonts_list("a | p | /f\na | p | /g\nb | p\n", "fonts.txt");
  REQUIRE_FALSE(read);
  REQUIRE(read.faults().size() == 2);
  CHECK(base::to_string(read.faults()[0]) ==
        "fonts.txt:2: error: face \"a\" is listed twice [fonts-list]\n"
        "  hint: take one of the two lines out\n");
  CHECK(base::to_string(read.faults()[1]) ==
        "fonts.txt:3: error: \"b | p\" is not a face [fonts-list]\n"
        "  hint: write: name | Debian package | file\n");
}

// What the fonts' own makers say of them: Vollkorn (Friedrich Althausen) has old-style figures by
// default, lining and tabular ones by feature, small capitals and standard ligatures; Lato's
// default figures are lining and tabular ones come by feature.
TEST_CASE("pairs are kerned") {
  const FontBook fonts = font_book();
  for (const char* face : {"vollkorn-regular", "lato-regular"}) {
    CAPTURE(face);
    CHECK(shaped(fonts, face, "AV").width <
          shaped(fonts, face, "A").width + shaped(fonts, face, "V").width);
  }
}

TEST_CASE("a ligature is one glyph that points at its first letter") {
  const FontBook fonts = font_book();
  const Shaped run = shaped(fonts, "vollkorn-regular", "office");
  CHECK(run.glyphs.size() == 4);  // o, ffi, c, e
  CHECK(run.glyphs[1].cluster == 1);
  CHECK(run.glyphs[2].cluster == 4);
}

TEST_CASE("the width of a run is the sum of its advances") {
  const FontBook fonts = font_book();
  const Shaped run = shaped(fonts, "vollkorn-italic", "Tail plate");
  std::int64_t sum = 0;
  for (const Glyph& glyph : run.glyphs)
    sum += glyph.advance;
  CHECK(run.width == sum);
  CHECK(run.width > 0);
}

TEST_CASE("tabular figures are equally wide, lining ones differ from old-style ones") {
  const FontBook fonts = font_book();
  for (const char* face : {"vollkorn-regular", "lato-regular", "lato-bold"}) {
    CAPTURE(face);
    std::set<std::int64_t> widths;
    for (const char figure : std::string("0123456789")) {
      widths.insert(shaped(fonts, face, std::string(1, figure), {"lnum", "tnum"}).width);
    }
    CHECK(widths.size() == 1);
  }
  const Shaped old_style = shaped(fonts, "vollkorn-regular", "3");
  const Shaped lining = shaped(fonts, "vollkorn-regular", "3", {"lnum"});
  CHECK(old_style.glyphs[0].id != lining.glyphs[0].id);
  std::set<std::int64_t> proportional;
  for (const char figure : std::string("0123456789")) {
    proportional.insert(shaped(fonts, "vollkorn-regular", std::string(1, figure), {"pnum"}).width);
  }
  CHECK(proportional.size() > 1);
}

TEST_CASE("small capitals are other glyphs for the same text") {
  const FontBook fonts = font_book();
  const Shaped plain = shaped(fonts, "vollkorn-regular", "bought");
  const Shaped small = shaped(fonts, "vollkorn-regular", "bought", {"smcp"});
  REQUIRE(plain.glyphs.size() == small.glyphs.size());
  for (std::size_t i = 0; i < plain.glyphs.size(); ++i) {
    CHECK(plain.glyphs[i].id != small.glyphs[i].id);
    CHECK(plain.glyphs[i].cluster == small.glyphs[i].cluster);
  }
}

TEST_CASE("a soft hyphen inside a line sets nothing") {
  const FontBook fonts = font_book();
  const Shaped run = shaped(fonts, "vollkorn-regular", "co\u00ADop");
  CHECK(run.glyphs.size() == 4);
  CHECK(run.glyphs[2].cluster == 4);
}

TEST_CASE("scripts in one run are each shaped as their own") {
  const FontBook fonts = font_book();
  const Shaped mixed = shaped(fonts, "gentium-regular", "To Αυ, να");
  const Shaped latin = shaped(fonts, "gentium-regular", "To ");
  const Shaped greek = shaped(fonts, "gentium-regular", "Αυ, να");
  CHECK(mixed.width == latin.width + greek.width);
  CHECK(mixed.glyphs.size() == latin.glyphs.size() + greek.glyphs.size());
  CHECK(std::is_sorted(mixed.glyphs.begin(), mixed.glyphs.end(),
                       [](const Glyph& a, const Glyph& b) { return a.cluster < b.cluster; }));
}

TEST_CASE("a face says which characters it has") {
  const FontBook fonts = font_book();
  const FaceId vollkorn = fonts.face("vollkorn-regular");
  CHECK(fonts.has(vollkorn, U'Å'));
  CHECK(fonts.has(vollkorn, U'½'));
  CHECK_FALSE(fonts.has(vollkorn, U'修'));
  CHECK(fonts.has(fonts.face("ipaex-mincho"), U'修'));
  CHECK(fonts.has(fonts.face("gentium-regular"), U'ᾠ'));
}

// The fonts' own OS/2 tables, read apart from this program: sCapHeight, sxHeight, unitsPerEm.
TEST_CASE("metrics are the font's own") {
  const FontBook fonts = font_book();
  const FaceMetrics vollkorn = fonts.metrics(fonts.face("vollkorn-regular"));
  CHECK(vollkorn.units_per_em == 1000);
  CHECK(vollkorn.cap_height == 676);
  CHECK(vollkorn.x_height == 458);
  const FaceMetrics lato = fonts.metrics(fonts.face("lato-regular"));
  CHECK(lato.units_per_em == 2000);
  CHECK(lato.cap_height == 1433);
  CHECK(lato.x_height == 1013);
}

TEST_CASE("the same words asked again are the same; other features are not") {
  const FontBook fonts = font_book();
  const Shaped first = shaped(fonts, "vollkorn-regular", "1948");
  const Shaped lining = shaped(fonts, "vollkorn-regular", "1948", {"lnum"});
  const Shaped italic = shaped(fonts, "vollkorn-italic", "1948");
  const Shaped again = shaped(fonts, "vollkorn-regular", "1948");
  CHECK(again.glyphs == first.glyphs);
  CHECK(again.width == first.width);
  CHECK(lining.glyphs != first.glyphs);
  CHECK(italic.face != first.face);
}

TEST_CASE("a face tells what a font descriptor wants to know") {
  const FontBook fonts = font_book();
  const FaceFacts upright = fonts.facts(fonts.face("vollkorn-regular"));
  CHECK(upright.postscript_name == "Vollkorn-Regular");
  CHECK(upright.slant == 0);
  CHECK(upright.weight == 400);
  CHECK(upright.y_min < 0);
  CHECK(upright.y_max > 676);
  CHECK(fonts.facts(fonts.face("vollkorn-italic")).slant < 0);
  CHECK(fonts.facts(fonts.face("lato-bold")).weight == 700);
}

TEST_CASE("a subset numbers its glyphs anew and is small") {
  const FontBook fonts = font_book();
  const Shaped run = shaped(fonts, "vollkorn-regular", "Ä");
  const auto subset =
      fonts.subset(run.face, std::vector<std::uint32_t>{0, run.glyphs[0].id, run.glyphs[0].id});
  REQUIRE(subset);
  CHECK(subset->glyphs[0] == 0);
  CHECK(subset->glyphs[1] > 0);
  CHECK(subset->glyphs[1] == subset->glyphs[2]);
  CHECK(subset->glyphs[1] < run.glyphs[0].id);
  CHECK(subset->file.size() < 4000);
}

TEST_CASE("a face that cannot be opened cannot be cut") {
  const FontBook fonts({{"lost", "fonts-lost", {"/nowhere/lost.ttf"}}});
  const auto subset = fonts.subset(0, std::vector<std::uint32_t>{1});
  REQUIRE_FALSE(subset);
  CHECK(subset.faults().front().rule == "font-missing");
}

}  // namespace
}  // namespace winchbook::text
