#include "layout/set_paragraph.h"

#include <algorithm>
#include <utility>

#include "layout/characters.h"
#include "layout/set_beside.h"
#include "layout/shapes.h"

namespace winchbook::layout {
namespace {

using base::points;
using document::Paragraph;
using document::ParagraphManner;
using document::Role;
using document::Width;

constexpr Length kIndent = points(15);
constexpr Length kInitialGap = points(3);
constexpr int kInitialLines = 3;
constexpr Length kUnderCaution = points(3.75);
constexpr Length kRule = points(0.75);
constexpr Length kUnderRule = points(3.75);

Role role_of(ParagraphManner manner) {
  if (manner == ParagraphManner::small) return Role::small_reading;
  if (manner == ParagraphManner::note) return Role::side_note;
  return Role::reading;
}

/// How many bytes of the words stand large: the first letter, with a quotation mark before it.
std::size_t initial_bytes(std::string_view words, std::string_view language) {
  std::size_t letters = 0;
  for (const std::uint32_t end : text::character_ends(words, language)) {
    std::size_t at = letters;
    const char32_t character = next_character(words, at);
    letters = end;
    const bool quotation = character == '"' || character == '\'' ||
                           (character >= 0x2018 && character <= 0x201F) || character == 0xAB;
    if (!quotation) break;
  }
  return letters;
}

/// Where the words in small capitals end: a few words, or as far as the first stop.
std::size_t lead_bytes(std::string_view words) {
  constexpr std::size_t kLeast = 18;
  std::size_t end = 0;
  while (end < words.size()) {
    std::size_t space = words.find(' ', end);
    if (space == std::string_view::npos) space = words.size();
    const bool stops =
        space > end && std::string_view(",.;:!?").find(words[space - 1]) != std::string_view::npos;
    if (stops) return space - 1;
    if (space >= kLeast) return space;
    end = space + 1;
  }
  return words.size();
}

/// A caution beside a short paragraph may reach this far below it (over every such paragraph, at
/// full width, they would make a page of bars); what has a caution of its own then moves down to
/// stand level with that one.
constexpr Length kCautionOverhang = points(60);

/// Cautions that are much higher than their paragraph stand over it instead of beside it.
void put_over_if_long(std::vector<document::Beside>& beside, Length paragraph, TagId parent,
                      const Setting& setting, Slices& slices) {
  std::vector<document::Beside> kept;
  for (document::Beside& one : beside) {
    const auto* caution = std::get_if<document::Caution>(&one);
    if (caution != nullptr) {
      std::vector<Tag> tried;
      const Setting trial{setting.style, setting.fonts, setting.language, tried};
      if (set_caution(*caution, setting.style.side, kArtifact, trial).height >
          paragraph + kCautionOverhang) {
        Slice slice;
        slice.full = true;
        slice.keep_with_next = true;
        slice.frame = set_caution(*caution, setting.style.frame_width(), parent, setting);
        slice.frame.height += kUnderCaution;
        slices.start_block({});
        slices.add(std::move(slice));
        continue;
      }
    }
    kept.push_back(std::move(one));
  }
  beside = std::move(kept);
}

bool is_caution(const document::Beside& one) {
  return std::holds_alternative<document::Caution>(one);
}

/// The rule of a subhead that stands at the frame's left edge.
void put_rule_over(Slice& slice, bool dashed, const Setting& setting) {
  Frame with_rule{slice.frame.width, slice.frame.height + kUnderRule, {}};
  Stroke stroke{kRule, setting.style.ink};
  if (dashed) stroke.dashes = {points(3), points(2)};
  with_rule.items.emplace_back(
      drawn_line({{}, kRule / 2}, {setting.style.frame_width(), kRule / 2}, stroke, kArtifact));
  place(slice.frame, {{}, kUnderRule}, with_rule.items);
  slice.frame = std::move(with_rule);
}

struct Opening {
  Measure measure;
  InlineText line;
  TextItem initial;
};

/// The story's first paragraph: a three-line initial, then a few words in small capitals. What is
/// read aloud is the whole of them, letter and words joined.
Opening opening_of(const Paragraph& paragraph, const std::string& first, TagId tag,
                   const Setting& setting) {
  Opening opening;
  const std::size_t letters = initial_bytes(first, setting.language);
  const std::string rest = first.substr(letters);
  const std::size_t lead = lead_bytes(rest);
  Tag span{.type = TagType::span, .parent = tag};
  span.actual_text = first.substr(0, letters + lead);
  const TagId joined = setting.add_tag(std::move(span));
  opening.initial = setting.line(Role::initial, first.substr(0, letters), {}, joined);
  opening.initial.actual_text = opening.initial.text;
  const Length indent = width_of(opening.initial, setting.fonts) + kInitialGap;
  opening.measure.indents.assign(kInitialLines, indent);
  document::Text words = paragraph.words;
  std::get<document::Run>(words.parts.front()).text = rest;
  append_words(opening.line, words, Role::reading, tag, setting,
               {static_cast<std::uint32_t>(lead), joined});
  return opening;
}

/// The first run's words when a paragraph can open with an initial: one that the initial's own face
/// has, for another's would not stand as it should.
const std::string* opening_words(const Paragraph& paragraph, const Setting& setting) {
  if (paragraph.manner != ParagraphManner::opening || paragraph.words.empty()) return nullptr;
  const auto* run = std::get_if<document::Run>(&paragraph.words.parts.front());
  if (run == nullptr || run->text.empty()) return nullptr;
  const text::FaceId face = setting.face(Role::initial);
  const std::size_t letters = initial_bytes(run->text, setting.language);
  for (std::size_t at = 0; at < letters;) {
    if (!setting.fonts.has(face, next_character(run->text, at))) return nullptr;
  }
  return &run->text;
}

}  // namespace

std::size_t add_lines(const std::vector<SetLine>& lines, Role role, Length left,
                      const Setting& setting, Slices& slices) {
  const std::size_t first = slices.slices.size();
  const Length baseline = first_baseline(role, setting);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    Slice slice;
    slice.frame.width = setting.style.frame_width();
    slice.frame.height = setting.style.of(role).leading;
    place({{}, {}, lines[i].items}, {left, baseline}, slice.frame.items);
    slice.keep_with_next = (i == 0 || i + 2 == lines.size()) && i + 1 < lines.size();
    slices.add(std::move(slice));
  }
  return first;
}

void add_paragraph(const Paragraph& paragraph, bool after_text, TagId parent,
                   const Setting& setting, Slices& slices) {
  const document::Style& style = setting.style;
  const Role role = role_of(paragraph.manner);
  const bool full = paragraph.width == Width::full;
  const Length left = full ? Length{} : style.side + style.gutter;
  Tag element{.type = TagType::paragraph, .parent = parent};
  element.language = paragraph.words.language;
  const TagId tag = setting.add_tag(std::move(element));
  Measure measure{full ? style.frame_width() : style.main};
  std::vector<SetLine> lines;
  if (const std::string* first = opening_words(paragraph, setting)) {
    Opening opening = opening_of(paragraph, *first, tag, setting);
    measure.indents = opening.measure.indents;
    lines = set_lines(opening.line, measure, setting);
    // Beside a shorter paragraph the letter would hang into the next.
    while (lines.size() < kInitialLines)
      lines.emplace_back();
    opening.initial.origin.y += style.of(role).leading * (kInitialLines - 1);
    lines.front().items.insert(lines.front().items.begin(), std::move(opening.initial));
  } else {
    const bool indented = paragraph.manner == ParagraphManner::reading && after_text;
    if (indented) measure.indents = {kIndent};
    lines = set_lines(inline_text(paragraph.words, role, tag, setting), measure, setting);
  }
  if (lines.empty()) return;
  const Length height = style.of(role).leading * static_cast<int>(lines.size());
  std::vector<document::Beside> beside = paragraph.beside;
  // A warning is level with its work; what else stands in the margin comes under it.
  std::stable_partition(beside.begin(), beside.end(), is_caution);
  put_over_if_long(beside, height, parent, setting, slices);
  slices.start_block({});
  const std::size_t at = add_lines(lines, role, left, setting, slices);
  std::vector<Slice>& all = slices.slices;
  if (measure.indents.size() == kInitialLines) {
    for (std::size_t i = at; i + 1 < all.size() && i < at + kInitialLines - 1; ++i)
      all[i].keep_with_next = true;
  }
  if (full) {
    for (std::size_t i = at; i < all.size(); ++i)
      all[i].full = true;
  }
  // Beside lines as wide as the frame nothing can stand: it follows under them.
  Slice& host = full ? all.back() : all[at];
  host.beside = set_beside(beside, parent, setting);
  host.level_with_margin = !beside.empty() && is_caution(beside.front());
  if (!paragraph.anchor.empty()) all[at].anchors.push_back(paragraph.anchor);
}

void add_subhead(const document::Subhead& subhead, TagType level, TagId parent,
                 const Setting& setting, Slices& slices) {
  const TagId tag = setting.add_tag({.type = level, .parent = parent});
  const InlineText line = inline_text(document::plain(subhead.words), Role::subhead, tag, setting);
  const bool full = subhead.width == Width::full;
  const Length width = full ? setting.style.frame_width() : setting.style.main;
  const std::vector<SetLine> lines = set_lines(line, {width}, setting);
  if (lines.empty()) return;
  slices.start_block(setting.style.line);
  const Length left = full ? Length{} : setting.style.side + setting.style.gutter;
  const std::size_t at = add_lines(lines, Role::subhead, left, setting, slices);
  for (std::size_t i = at; i < slices.slices.size(); ++i) {
    slices.slices[i].heading = true;
    slices.slices[i].keep_with_next = true;
    slices.slices[i].full = full;
  }
  Slice& first = slices.slices[at];
  if (full) put_rule_over(first, subhead.dashed, setting);
  first.beside = set_beside(subhead.beside, parent, setting);
  first.bookmark = BookmarkAt{subhead.words, 1};
  if (!subhead.anchor.empty()) first.anchors.push_back(subhead.anchor);
}

}  // namespace winchbook::layout
