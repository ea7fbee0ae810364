#include "text/font_book.h"

#include <fmt/format.h>
#include <hb-ot.h>
#include <hb.h>

#include <algorithm>
#include <cstddef>
#include <optional>
#include <stdexcept>
#include <utility>

#include "base/words_of_text.h"
#include "text/handles.h"

namespace winchbook::text {
namespace {

struct FontFree {
  void operator()(hb_font_t* font) const { hb_font_destroy(font); }
};
struct BufferFree {
  void operator()(hb_buffer_t* buffer) const { hb_buffer_destroy(buffer); }
};
using Font = std::unique_ptr<hb_font_t, FontFree>;
using Buffer = std::unique_ptr<hb_buffer_t, BufferFree>;

bool has_table(hb_face_t* face, hb_tag_t tag) {
  const Blob table(hb_face_reference_table(face, tag));
  return hb_blob_get_length(table.get()) > 0;
}

FaceMetrics measure(hb_face_t* face, hb_font_t* font) {
  FaceMetrics metrics;
  metrics.units_per_em = static_cast<int>(hb_face_get_upem(face));
  const auto ask = [&](hb_ot_metrics_tag_t tag) {
    hb_position_t position = 0;
    hb_ot_metrics_get_position_with_fallback(font, tag, &position);
    return static_cast<int>(position);
  };
  metrics.ascender = ask(HB_OT_METRICS_TAG_HORIZONTAL_ASCENDER);
  metrics.descender = ask(HB_OT_METRICS_TAG_HORIZONTAL_DESCENDER);
  metrics.cap_height = ask(HB_OT_METRICS_TAG_CAP_HEIGHT);
  metrics.x_height = ask(HB_OT_METRICS_TAG_X_HEIGHT);
  return metrics;
}

/// Reads one UTF-8 character at `offset` and moves past it; bytes that are no UTF-8 read as U+FFFD.
char32_t next_character(std::string_view text, std::size_t& offset) {
  const auto lead = static_cast<unsigned char>(text[offset++]);
  if (lead < 0x80) return lead;
  const int follow = lead >= 0xF0 ? 3 : lead >= 0xE0 ? 2 : lead >= 0xC2 ? 1 : 0;
  if (follow == 0 || lead > 0xF4) return U'\uFFFD';
  auto value = static_cast<char32_t>(lead & (0x3FU >> follow));
  for (int i = 0; i < follow; ++i) {
    if (offset >= text.size() || (static_cast<unsigned char>(text[offset]) & 0xC0U) != 0x80U) {
      return U'\uFFFD';
    }
    value = value << 6U | (static_cast<unsigned char>(text[offset++]) & 0x3FU);
  }
  return value;
}

bool is_real(hb_script_t script) {
  return script != HB_SCRIPT_COMMON && script != HB_SCRIPT_INHERITED && script != HB_SCRIPT_UNKNOWN;
}

struct ScriptRun {
  std::size_t end = 0;
  hb_script_t script = HB_SCRIPT_COMMON;
};

/// Where the script changes. Spaces, figures and marks belong to what stands before them.
std::vector<ScriptRun> script_runs(std::string_view text) {
  std::vector<ScriptRun> runs(1);
  if (std::all_of(text.begin(), text.end(), [](char c) { return (c & 0x80) == 0; })) {
    return {{text.size(), HB_SCRIPT_LATIN}};
  }
  hb_unicode_funcs_t* unicode = hb_unicode_funcs_get_default();
  for (std::size_t offset = 0; offset < text.size();) {
    const std::size_t start = offset;
    const hb_script_t script = hb_unicode_script(unicode, next_character(text, offset));
    if (is_real(script) && script != runs.back().script) {
      if (is_real(runs.back().script)) {
        runs.back().end = start;
        runs.emplace_back();
      }
      runs.back().script = script;
    }
  }
  runs.back().end = text.size();
  return runs;
}

/// One buffer for every shaping; making one costs more than shaping a word.
hb_buffer_t* shaping_buffer() {
  thread_local const Buffer buffer(hb_buffer_create());
  hb_buffer_clear_contents(buffer.get());
  return buffer.get();
}

void append_glyphs(hb_buffer_t* buffer, Shaped& shaped) {
  unsigned count = 0;
  const hb_glyph_info_t* infos = hb_buffer_get_glyph_infos(buffer, &count);
  const hb_glyph_position_t* positions = hb_buffer_get_glyph_positions(buffer, nullptr);
  shaped.glyphs.reserve(shaped.glyphs.size() + count);
  for (unsigned i = 0; i < count; ++i) {
    shaped.glyphs.push_back({infos[i].codepoint, positions[i].x_advance, positions[i].x_offset,
                             positions[i].y_offset, infos[i].cluster});
    shaped.width += positions[i].x_advance;
  }
}

}  // namespace

base::Result<std::vector<FaceEntry>> read_fonts_list(std::string_view bytes,
                                                     std::string_view file) {
  std::vector<FaceEntry> entries;
  base::Diagnostics faults;
  int line_number = 0;
  for (const std::string_view whole : base::parts_of(bytes, '\n')) {
    const std::string_view line = base::trimmed(whole.substr(0, whole.find('#')));
    ++line_number;
    if (line.empty()) continue;
    std::vector<std::string> fields;
    for (const std::string_view field : base::parts_of(line, '|'))
      fields.emplace_back(base::trimmed(field));
    const base::Location where{std::string(file), line_number, 0};
    if (fields.size() < 3 ||
        std::any_of(fields.begin(), fields.end(), [](const auto& f) { return f.empty(); })) {
      faults.push_back(
          base::of_machine(base::error_at(where, fmt::format("\"{}\" is not a face", line),
                                          "write: name | Debian package | file", "fonts-list")));
      continue;
    }
    const auto same_name = [&](const FaceEntry& entry) { return entry.name == fields[0]; };
    if (std::any_of(entries.begin(), entries.end(), same_name)) {
      faults.push_back(base::of_machine(
          base::error_at(where, fmt::format("face \"{}\" is listed twice", fields[0]),
                         "take one of the two lines out", "fonts-list")));
      continue;
    }
    entries.push_back(
        {std::move(fields[0]),
         std::move(fields[1]),
         {std::make_move_iterator(fields.begin() + 2), std::make_move_iterator(fields.end())}});
  }
  if (!faults.empty()) return faults;
  return entries;
}

/// A face in use; every member is null when it could not be opened.
struct FontBook::OpenFace {
  Blob blob;
  Face face;
  Font font;
  FaceMetrics metrics;
};

FontBook::FontBook(std::vector<FaceEntry> entries)
    : entries_(std::move(entries)), faces_(entries_.size()) {}
FontBook::FontBook(FontBook&&) noexcept = default;
FontBook& FontBook::operator=(FontBook&&) noexcept = default;
FontBook::~FontBook() = default;

FaceId FontBook::face(std::string_view name) const {
  const auto found = std::find_if(entries_.begin(), entries_.end(),
                                  [&](const FaceEntry& entry) { return entry.name == name; });
  if (found == entries_.end()) {
    throw std::out_of_range(fmt::format("no face \"{}\" in the fonts list", name));
  }
  return static_cast<FaceId>(found - entries_.begin());
}

bool FontBook::knows(std::string_view name) const {
  return std::any_of(entries_.begin(), entries_.end(),
                     [&](const FaceEntry& entry) { return entry.name == name; });
}

const std::string& FontBook::name(FaceId face) const {
  return entries_.at(face).name;
}

const base::Diagnostics& FontBook::faults() const {
  return faults_;
}

const FontBook::OpenFace* FontBook::opened(FaceId id) const {
  std::unique_ptr<OpenFace>& slot = faces_.at(id);
  if (slot) return slot->font ? slot.get() : nullptr;
  slot = std::make_unique<OpenFace>();
  const FaceEntry& entry = entries_[id];
  for (const std::string& file : entry.files) {
    slot->blob.reset(hb_blob_create_from_file_or_fail(file.c_str()));
    if (slot->blob) break;
  }
  if (!slot->blob) {
    faults_.push_back(base::of_machine(base::error(
        fmt::format("font \"{}\" is not there: no file {}", entry.name, entry.files.front()),
        fmt::format("install the package {}, or give another file for it in the fonts list",
                    entry.package),
        "font-missing")));
    return nullptr;
  }
  slot->face.reset(hb_face_create(slot->blob.get(), 0));
  if (!has_table(slot->face.get(), HB_TAG('g', 'l', 'y', 'f'))) {
    faults_.push_back(base::of_machine(base::error(
        fmt::format("font \"{}\" has no TrueType outlines, expected a .ttf file", entry.name),
        "name another file for it in the fonts list", "font-kind")));
    return nullptr;
  }
  slot->font.reset(hb_font_create(slot->face.get()));
  slot->metrics = measure(slot->face.get(), slot->font.get());
  return slot.get();
}

Shaped FontBook::shape(FaceId id, std::string_view utf8, std::span<const std::string> features,
                       std::string_view language) const {
  const OpenFace* face = opened(id);
  if (face == nullptr || utf8.empty()) return {id, std::string(utf8), {}, 0};
  std::string question = fmt::format("{}\n{}\n{}\n", id, language, fmt::join(features, " "));
  question += utf8;
  const auto [known, is_new] = shaped_.try_emplace(std::move(question));
  if (is_new) {
    known->second = shape_anew(*face, utf8, features, language);
    known->second.face = id;
  }
  return known->second;
}

Shaped FontBook::shape_anew(const OpenFace& face, std::string_view utf8,
                            std::span<const std::string> features,
                            std::string_view language) const {
  Shaped shaped;
  shaped.text = utf8;
  std::vector<hb_feature_t> wanted;
  wanted.reserve(features.size());
  for (const std::string& tag : features) {
    wanted.push_back({hb_tag_from_string(tag.data(), static_cast<int>(tag.size())), 1,
                      HB_FEATURE_GLOBAL_START, HB_FEATURE_GLOBAL_END});
  }
  // The one shaper named: Gentium also carries Graphite tables, and results must not depend on how
  // HarfBuzz was built.
  static constexpr const char* kShapers[] = {"ot", nullptr};
  const hb_language_t tongue =
      hb_language_from_string(language.data(), static_cast<int>(language.size()));
  std::size_t start = 0;
  for (const ScriptRun& run : script_runs(utf8)) {
    hb_buffer_t* buffer = shaping_buffer();
    hb_buffer_set_cluster_level(buffer, HB_BUFFER_CLUSTER_LEVEL_MONOTONE_CHARACTERS);
    hb_buffer_set_flags(buffer, HB_BUFFER_FLAG_REMOVE_DEFAULT_IGNORABLES);
    hb_buffer_set_direction(buffer, HB_DIRECTION_LTR);
    hb_buffer_set_script(buffer, is_real(run.script) ? run.script : HB_SCRIPT_LATIN);
    hb_buffer_set_language(buffer, tongue);
    hb_buffer_add_utf8(buffer, utf8.data(), static_cast<int>(utf8.size()),
                       static_cast<unsigned>(start), static_cast<int>(run.end - start));
    hb_shape_full(face.font.get(), buffer, wanted.data(), static_cast<unsigned>(wanted.size()),
                  kShapers);
    append_glyphs(buffer, shaped);
    start = run.end;
  }
  return shaped;
}

FaceMetrics FontBook::metrics(FaceId id) const {
  const OpenFace* face = opened(id);
  return face == nullptr ? FaceMetrics{} : face->metrics;
}

bool FontBook::has(FaceId id, char32_t character) const {
  const OpenFace* face = opened(id);
  hb_codepoint_t glyph = 0;
  return face != nullptr && hb_font_get_nominal_glyph(face->font.get(), character, &glyph) != 0;
}

std::int32_t FontBook::advance(FaceId id, std::uint32_t glyph) const {
  const OpenFace* face = opened(id);
  return face == nullptr ? 0 : hb_font_get_glyph_h_advance(face->font.get(), glyph);
}

FaceFacts FontBook::facts(FaceId id) const {
  const OpenFace* face = opened(id);
  return face == nullptr ? FaceFacts{} : facts_of(face->face.get(), face->font.get());
}

base::Result<Subset> FontBook::subset(FaceId id, std::span<const std::uint32_t> glyphs) const {
  const OpenFace* face = opened(id);
  if (face == nullptr) return faults_;
  std::optional<Subset> made = cut(face->face.get(), glyphs);
  if (!made) {
    return base::of_machine(base::error(
        fmt::format("font \"{}\" cannot be cut down to the characters used", entries_[id].name),
        fmt::format("install the package {} again, or name another face in the template",
                    entries_[id].package),
        "font-subset"));
  }
  return std::move(*made);
}

}  // namespace winchbook::text
