#include "pdf/embedded_font.h"

#include <fmt/format.h>
#include <hb-ot.h>
#include <hb-subset.h>
#include <hb.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <iterator>
#include <optional>
#include <stdexcept>
#include <utility>

#include "pdf/syntax.h"

namespace winchbook::pdf {
namespace {

struct BlobFree {
  void operator()(hb_blob_t* blob) const { hb_blob_destroy(blob); }
};
struct FaceFree {
  void operator()(hb_face_t* face) const { hb_face_destroy(face); }
};
struct InputFree {
  void operator()(hb_subset_input_t* input) const { hb_subset_input_destroy(input); }
};
struct PlanFree {
  void operator()(hb_subset_plan_t* plan) const { hb_subset_plan_destroy(plan); }
};
using Blob = std::unique_ptr<hb_blob_t, BlobFree>;
using Face = std::unique_ptr<hb_face_t, FaceFree>;
using Input = std::unique_ptr<hb_subset_input_t, InputFree>;
using Plan = std::unique_ptr<hb_subset_plan_t, PlanFree>;

/// Tables that a font inside a PDF has no use for (ISO 32000-1, 9.9).
constexpr std::array<hb_tag_t, 18> kDropped = {
    HB_TAG('G', 'S', 'U', 'B'), HB_TAG('G', 'P', 'O', 'S'), HB_TAG('G', 'D', 'E', 'F'),
    HB_TAG('B', 'A', 'S', 'E'), HB_TAG('D', 'S', 'I', 'G'), HB_TAG('F', 'F', 'T', 'M'),
    HB_TAG('O', 'S', '/', '2'), HB_TAG('S', 'T', 'A', 'T'), HB_TAG('V', 'O', 'R', 'G'),
    HB_TAG('c', 'm', 'a', 'p'), HB_TAG('g', 'a', 's', 'p'), HB_TAG('k', 'e', 'r', 'n'),
    HB_TAG('m', 'e', 't', 'a'), HB_TAG('n', 'a', 'm', 'e'), HB_TAG('p', 'o', 's', 't'),
    HB_TAG('v', 'h', 'e', 'a'), HB_TAG('v', 'm', 't', 'x'), HB_TAG('S', 'i', 'l', 'f')};

struct Subset {
  Blob file;
  std::string glyph_map;  ///< CIDToGIDMap: two bytes a code, high one first
};

std::string_view bytes_of(hb_blob_t* blob) {
  unsigned length = 0;
  const char* data = hb_blob_get_data(blob, &length);
  return {data, length};
}

std::string postscript_name(hb_face_t* face) {
  std::array<char, 128> name{};
  auto length = static_cast<unsigned>(name.size());
  hb_ot_name_get_utf8(face, HB_OT_NAME_ID_POSTSCRIPT_NAME, HB_LANGUAGE_INVALID, &length,
                      name.data());
  return length == 0 ? "Unnamed" : std::string(name.data(), length);
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

EmbeddedFont::EmbeddedFont(hb_face_t* face, std::string name, Haru& haru)
    : face_(face),
      font_(hb_font_create(face), hb_font_destroy),
      name_(std::move(name)),
      haru_(haru),
      type0_(&haru.add_object()),
      units_per_em_(static_cast<int>(hb_face_get_upem(face))),
      codes_(1),
      first_(hb_face_get_glyph_count(face)) {}

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
  const std::int64_t advance = hb_font_get_glyph_h_advance(font_.get(), glyph);
  const std::int64_t width = rounded_quotient(advance * 1'000'000, units_per_em_);
  codes_.push_back({glyph, std::string(text), width, 0});
  return {code, width};
}

namespace {

/// The face's table cut down to `glyphs` (by code; the first is .notdef).
std::optional<Subset> cut(hb_face_t* face, const std::vector<std::uint32_t>& glyphs) {
  const Input input(hb_subset_input_create_or_fail());
  if (!input) return std::nullopt;
  hb_set_t* wanted = hb_subset_input_glyph_set(input.get());
  for (const std::uint32_t glyph : glyphs)
    hb_set_add(wanted, glyph);
  hb_subset_input_set_flags(input.get(), HB_SUBSET_FLAGS_NO_HINTING);
  hb_set_t* dropped = hb_subset_input_set(input.get(), HB_SUBSET_SETS_DROP_TABLE_TAG);
  for (const hb_tag_t tag : kDropped)
    hb_set_add(dropped, tag);
  hb_set_clear(hb_subset_input_set(input.get(), HB_SUBSET_SETS_LAYOUT_FEATURE_TAG));
  const Plan plan(hb_subset_plan_create_or_fail(face, input.get()));
  if (!plan) return std::nullopt;
  const Face cut_face(hb_subset_plan_execute_or_fail(plan.get()));
  if (!cut_face) return std::nullopt;
  const hb_map_t* renumbered = hb_subset_plan_old_to_new_glyph_mapping(plan.get());
  Subset subset{Blob(hb_face_reference_blob(cut_face.get())), {}};
  for (const std::uint32_t glyph : glyphs) {
    const std::uint32_t now = hb_map_get(renumbered, glyph);
    subset.glyph_map += static_cast<char>(now >> 8U & 0xFFU);
    subset.glyph_map += static_cast<char>(now & 0xFFU);
  }
  return subset;
}

}  // namespace

base::Diagnostics EmbeddedFont::embed() {
  std::vector<std::uint32_t> glyphs;
  for (const Code& code : codes_)
    glyphs.push_back(code.glyph);
  const std::optional<Subset> subset = cut(face_, glyphs);
  if (!subset) {
    return {base::error(fmt::format("font \"{}\" cannot be cut down to the characters used",
                                    postscript_name(face_)),
                        "install its package again, or name another face in the template",
                        "font-subset")};
  }
  const std::string used_widths = widths();
  const std::string base_font =
      subset_tag(subset->glyph_map + used_widths) + '+' + postscript_name(face_);

  const std::string_view file = bytes_of(subset->file.get());
  Object& font_file = haru_.add_deflated(file);
  font_file.entries += fmt::format("/Length1 {}", file.size());
  const Object& glyph_map = haru_.add_deflated(subset->glyph_map);
  const Object& unicode = haru_.add_deflated(unicode_map());

  Object& cid_font = haru_.add_object();
  cid_font.entries = "/Type/Font/Subtype/CIDFontType2/BaseFont";
  append_name(cid_font.entries, base_font);
  cid_font.entries += fmt::format(
      "/CIDSystemInfo<</Registry(Adobe)/Ordering(Identity)/Supplement 0>>"
      "/FontDescriptor {}/CIDToGIDMap {}/W[1[{}]]",
      descriptor(base_font, font_file).reference(), glyph_map.reference(), used_widths);

  type0_->entries = "/Type/Font/Subtype/Type0/BaseFont";
  append_name(type0_->entries, base_font);
  type0_->entries += fmt::format("/Encoding/Identity-H/DescendantFonts[{}]/ToUnicode {}",
                                 cid_font.reference(), unicode.reference());
  return {};
}

Object& EmbeddedFont::descriptor(const std::string& base_font, const Object& file) {
  const auto em = [&](double units) { return std::lround(units * 1000 / units_per_em_); };
  const auto metric = [&](hb_ot_metrics_tag_t tag) {
    hb_position_t position = 0;
    hb_ot_metrics_get_position_with_fallback(font_.get(), tag, &position);
    return em(position);
  };
  const Blob head(hb_face_reference_table(face_, HB_TAG('h', 'e', 'a', 'd')));
  const std::string_view table = bytes_of(head.get());
  const auto corner = [&](std::size_t at) {  // xMin, yMin, xMax, yMax at bytes 36 to 43
    const auto high = static_cast<unsigned char>(table[at]);
    const auto low = static_cast<unsigned char>(table[at + 1]);
    return em(static_cast<std::int16_t>(high << 8 | low));
  };
  const double slant =
      static_cast<double>(hb_style_get_value(font_.get(), HB_STYLE_TAG_SLANT_ANGLE));
  const bool bold = hb_style_get_value(font_.get(), HB_STYLE_TAG_WEIGHT) >= 600;
  // Symbolic (4), since its codes follow no standard encoding; italic (64).
  const int flags = 4 + (slant != 0 ? 64 : 0);

  Object& object = haru_.add_object();
  object.entries = "/Type/FontDescriptor/FontName";
  append_name(object.entries, base_font);
  object.entries += fmt::format(
      "/Flags {}/FontBBox[{} {} {} {}]/ItalicAngle {}/Ascent {}/Descent {}/CapHeight {}/StemV {}"
      "/FontFile2 {}",
      flags, corner(36), corner(38), corner(40), corner(42), std::lround(slant),
      metric(HB_OT_METRICS_TAG_HORIZONTAL_ASCENDER), metric(HB_OT_METRICS_TAG_HORIZONTAL_DESCENDER),
      metric(HB_OT_METRICS_TAG_CAP_HEIGHT), bold ? 120 : 80, file.reference());
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
