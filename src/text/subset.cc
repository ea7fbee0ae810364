#include "text/subset.h"

#include <hb-ot.h>
#include <hb-subset.h>
#include <hb.h>

#include <array>
#include <cstddef>
#include <memory>
#include <string_view>

#include "text/handles.h"

namespace winchbook::text {
namespace {

struct InputFree {
  void operator()(hb_subset_input_t* input) const { hb_subset_input_destroy(input); }
};
struct PlanFree {
  void operator()(hb_subset_plan_t* plan) const { hb_subset_plan_destroy(plan); }
};
using Input = std::unique_ptr<hb_subset_input_t, InputFree>;
using Plan = std::unique_ptr<hb_subset_plan_t, PlanFree>;

/// Tables that a font inside a document has no use for (ISO 32000-1, 9.9).
constexpr std::array<hb_tag_t, 18> kDropped = {
    HB_TAG('G', 'S', 'U', 'B'), HB_TAG('G', 'P', 'O', 'S'), HB_TAG('G', 'D', 'E', 'F'),
    HB_TAG('B', 'A', 'S', 'E'), HB_TAG('D', 'S', 'I', 'G'), HB_TAG('F', 'F', 'T', 'M'),
    HB_TAG('O', 'S', '/', '2'), HB_TAG('S', 'T', 'A', 'T'), HB_TAG('V', 'O', 'R', 'G'),
    HB_TAG('c', 'm', 'a', 'p'), HB_TAG('g', 'a', 's', 'p'), HB_TAG('k', 'e', 'r', 'n'),
    HB_TAG('m', 'e', 't', 'a'), HB_TAG('n', 'a', 'm', 'e'), HB_TAG('p', 'o', 's', 't'),
    HB_TAG('v', 'h', 'e', 'a'), HB_TAG('v', 'm', 't', 'x'), HB_TAG('S', 'i', 'l', 'f')};

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

}  // namespace

FaceFacts facts_of(hb_face_t* face, hb_font_t* font) {
  FaceFacts facts;
  facts.postscript_name = postscript_name(face);
  facts.glyphs = static_cast<int>(hb_face_get_glyph_count(face));
  facts.slant = static_cast<double>(hb_style_get_value(font, HB_STYLE_TAG_SLANT_ANGLE));
  facts.weight = static_cast<int>(hb_style_get_value(font, HB_STYLE_TAG_WEIGHT));
  const Blob head(hb_face_reference_table(face, HB_TAG('h', 'e', 'a', 'd')));
  const std::string_view table = bytes_of(head.get());
  if (table.size() < 44) return facts;
  const auto corner = [&](std::size_t at) {  // xMin, yMin, xMax, yMax at bytes 36 to 43
    const auto high = static_cast<unsigned char>(table[at]);
    const auto low = static_cast<unsigned char>(table[at + 1]);
    return static_cast<std::int16_t>(high << 8 | low);
  };
  facts.x_min = corner(36);
  facts.y_min = corner(38);
  facts.x_max = corner(40);
  facts.y_max = corner(42);
  return facts;
}

std::optional<Subset> cut(hb_face_t* face, std::span<const std::uint32_t> glyphs) {
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
  const Blob file(hb_face_reference_blob(cut_face.get()));
  Subset subset{std::string(bytes_of(file.get())), {}};
  const hb_map_t* renumbered = hb_subset_plan_old_to_new_glyph_mapping(plan.get());
  for (const std::uint32_t glyph : glyphs) {
    subset.glyphs.push_back(static_cast<std::uint16_t>(hb_map_get(renumbered, glyph)));
  }
  return subset;
}

}  // namespace winchbook::text
