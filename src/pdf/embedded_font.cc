#include "pdf/embedded_font.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <iterator>
#include <stdexcept>
#include <utility>

#include "pdf/syntax.h"

namespace winchbook::pdf {
namespace {

/// The CIDToGIDMap's bytes: two a code, high one first; code 0 is .notdef.
std::string glyph_map(const std::vector<std::uint16_t>& glyphs) {
  std::string out;
  for (const std::uint16_t glyph : glyphs) {
    out += static_cast<char>(glyph >> 8U);
    out += static_cast<char>(glyph & 0xFFU);
  }
  return out;
}

/// Six capitals that tell this subset from any other of the face (ISO 32000-1, 9.6.4): FNV-1a of
/// the glyph map and the widths.
std::string subset_tag(std::string_view contents) {
  std::uint64_t hash = 0xCBF29CE484222325U;
  for (const char c : contents)
    hash = (hash ^ static_cast<unsigned char>(c)) * 0x100000001B3U;
  std::string tag;
  for (int i = 0; i < 6; ++i, hash /= 26)
    tag += static_cast<char>('A' + hash % 26);
  return tag;
}

}  // namespace

EmbeddedFont::EmbeddedFont(const text::FontBook& book, text::FaceId face, std::string name,
                           Haru& haru)
    : book_(book),
      face_(face),
      metrics_(book.metrics(face)),
      facts_(book.facts(face)),
      name_(std::move(name)),
      haru_(haru),
      type0_(&haru.add_object()),
      codes_(1),
      first_(static_cast<std::size_t>(facts_.glyphs)) {}

EmbeddedFont::Shown EmbeddedFont::show(std::uint32_t glyph, std::string_view text) {
  std::uint16_t* last = &first_.at(glyph);
  while (*last != 0) {
    Code& known = codes_[*last];
    if (known.text == text) return {*last, known.width};
    last = &known.next;
  }
  if (codes_.size() > 0xFFFF) throw std::length_error("a font has run out of codes");
  const auto code = static_cast<std::uint16_t>(codes_.size());
  *last = code;
  const std::int64_t advance = book_.advance(face_, glyph);
  const std::int64_t width = rounded_quotient(advance * 1'000'000, metrics_.units_per_em);
  codes_.push_back({glyph, std::string(text), width, 0});
  return {code, width};
}

base::Diagnostics EmbeddedFont::embed() {
  std::vector<std::uint32_t> glyphs;
  for (const Code& code : codes_)
    glyphs.push_back(code.glyph);
  const base::Result<text::Subset> subset = book_.subset(face_, glyphs);
  if (!subset) return subset.faults();
  const std::string used_widths = widths();
  const std::string map = glyph_map(subset->glyphs);
  const std::string base_font = subset_tag(map + used_widths) + '+' + facts_.postscript_name;

  Object& font_file = haru_.add_deflated(subset->file);
  font_file.entries += fmt::format("/Length1 {}", subset->file.size());
  const Object& code_map = haru_.add_deflated(map);
  const Object& unicode = haru_.add_deflated(unicode_map());

  Object& cid_font = haru_.add_object();
  cid_font.entries = "/Type/Font/Subtype/CIDFontType2/BaseFont";
  append_name(cid_font.entries, base_font);
  cid_font.entries += fmt::format(
      "/CIDSystemInfo<</Registry(Adobe)/Ordering(Identity)/Supplement 0>>"
      "/FontDescriptor {}/CIDToGIDMap {}/W[1[{}]]",
      descriptor(base_font, font_file).reference(), code_map.reference(), used_widths);

  type0_->entries = "/Type/Font/Subtype/Type0/BaseFont";
  append_name(type0_->entries, base_font);
  type0_->entries += fmt::format("/Encoding/Identity-H/DescendantFonts[{}]/ToUnicode {}",
                                 cid_font.reference(), unicode.reference());
  return {};
}

Object& EmbeddedFont::descriptor(const std::string& base_font, const Object& file) {
  const auto em = [&](int units) {
    return rounded_quotient(std::int64_t{units} * 1000, metrics_.units_per_em);
  };
  // Symbolic (4), since its codes follow no standard encoding; italic (64).
  const int flags = 4 + (facts_.slant != 0 ? 64 : 0);
  constexpr int kSemibold = 600;
  const int stem = facts_.weight >= kSemibold ? 120 : 80;  // only a hint for substitution
  Object& object = haru_.add_object();
  object.entries = "/Type/FontDescriptor/FontName";
  append_name(object.entries, base_font);
  object.entries += fmt::format(
      "/Flags {}/FontBBox[{} {} {} {}]/ItalicAngle {}/Ascent {}/Descent {}/CapHeight {}/StemV {}"
      "/FontFile2 {}",
      flags, em(facts_.x_min), em(facts_.y_min), em(facts_.x_max), em(facts_.y_max),
      std::lround(facts_.slant), em(metrics_.ascender), em(metrics_.descender),
      em(metrics_.cap_height), stem, file.reference());
  return object;
}

std::string EmbeddedFont::widths() const {
  std::string out;
  for (std::size_t i = 1; i < codes_.size(); ++i) {
    if (i > 1) out += ' ';
    append_thousandths(out, codes_[i].width);
  }
  return out;
}

std::string EmbeddedFont::unicode_map() const {
  constexpr std::size_t kRowsInBlock = 100;  // ISO 32000-1, 9.10.3 after Adobe Technical Note 5014
  std::string out =
      "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
      "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n"
      "/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n"
      "1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n";
  for (std::size_t start = 1; start < codes_.size(); start += kRowsInBlock) {
    const std::size_t end = std::min(start + kRowsInBlock, codes_.size());
    fmt::format_to(std::back_inserter(out), "{} beginbfchar\n", end - start);
    for (std::size_t i = start; i < end; ++i) {
      fmt::format_to(std::back_inserter(out), "<{:04X}> <", i);
      append_utf16_hex(out, codes_[i].text);
      out += ">\n";
    }
    out += "endbfchar\n";
  }
  out += "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n";
  return out;
}

}  // namespace winchbook::pdf
