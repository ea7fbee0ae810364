#include "layout/set_words.h"

#include <algorithm>
#include <utility>

namespace winchbook::layout {
namespace {

/// Bytes of one line: seen up to `end`, followed by a space that is kept for readers aloud.
struct LineBytes {
  std::uint32_t begin = 0;
  std::uint32_t end = 0;
  std::uint32_t kept = 0;
  bool hyphen = false;
};

/// The glyphs of `span` that stand for the line's bytes, or nothing.
TextItem cut_out(const InlineText& line, const Span& span, const LineBytes& bytes, Length shift) {
  TextItem item;
  const std::uint32_t begin = std::max(span.begin, bytes.begin);
  const std::uint32_t end = std::min(span.end, bytes.kept);
  if (begin >= end) return item;
  item.face = span.face;
  item.size = span.size;
  item.colour = span.colour;
  item.tracking = span.tracking;
  item.tag = span.tag;
  item.text = line.text.substr(begin, end - begin);
  if (span.small_capitals) item.actual_text = item.text;
  for (std::size_t i = 0; i < span.glyphs.size(); ++i) {
    const std::uint32_t at = span.begin + span.glyphs[i].cluster;
    if (at < begin || at >= end) continue;
    if (item.glyphs.empty()) item.origin = {span.places[i] + shift, -span.raise};
    item.glyphs.push_back(span.glyphs[i]);
    item.glyphs.back().cluster = at - begin;
  }
  return item;
}

LinkItem link_over(const InlineText& line, const TextItem& item, int link, const Setting& setting) {
  const InlineLink& told = line.links[static_cast<std::size_t>(link)];
  const Length above = item.size * 3 / 4;
  LinkItem over;
  over.box = {item.origin.x, item.origin.y - above, width_of(item, setting.fonts),
              above + item.size / 4};
  over.target = told.target;
  over.words = told.words;
  over.tag = told.tag;
  return over;
}

TextItem hyphen_at(const InlineText& line, std::uint32_t offset, Length x, const Setting& setting) {
  TextItem item;
  for (const Span& span : line.spans) {
    if (offset <= span.begin || offset > span.end) continue;
    item.origin = {x, -span.raise};
    item.face = span.face;
    item.size = span.size;
    item.colour = span.colour;
    item.tag = span.tag;
    item.text = "-";
    item.actual_text = "\u00AD";
    item.glyphs = setting.fonts.shape(span.face, "-", {}, line.language).glyphs;
  }
  return item;
}

SetLine set_line(const InlineText& line, const LineBytes& bytes, Length indent,
                 const Setting& setting) {
  SetLine set;
  const bool last = bytes.kept >= line.text.size();
  const Length shift = indent - line.place_of(bytes.begin);
  for (const SignAt& sign : line.signs) {
    const bool here = sign.offset >= bytes.begin && (sign.offset < bytes.kept || last);
    if (!here) continue;
    std::vector<Item> drawn = draw_sign(sign.sign, {sign.place + shift, {}}, sign.colour, sign.tag);
    std::move(drawn.begin(), drawn.end(), std::back_inserter(set.items));
  }
  Length right = bytes.end >= line.text.size() ? line.right : line.place_of(bytes.end);
  for (const Span& span : line.spans) {
    TextItem item = cut_out(line, span, bytes, shift);
    if (item.glyphs.empty()) continue;
    if (span.link >= 0) set.items.emplace_back(link_over(line, item, span.link, setting));
    set.items.emplace_back(std::move(item));
  }
  set.width = right + shift;
  if (bytes.hyphen) {
    TextItem hyphen = hyphen_at(line, bytes.end, set.width, setting);
    set.width += width_of(hyphen, setting.fonts);
    set.items.emplace_back(std::move(hyphen));
  }
  return set;
}

}  // namespace

std::vector<SetLine> set_lines(const InlineText& line, const Measure& measure,
                               const Setting& setting) {
  LineWidths widths{.rest = measure.width};
  Length narrowest = measure.width;
  for (const Length indent : measure.indents) {
    widths.first.push_back(measure.width - indent);
    narrowest = std::min(narrowest, widths.first.back());
  }
  const InlineStops stops = stops_of(line, narrowest, setting);
  std::vector<SetLine> lines;
  LineBytes bytes;
  for (const std::size_t stop : break_lines(stops.measures, widths)) {
    const InlineStop& place = stops.places[stop];
    bytes.end = place.end;
    bytes.hyphen = place.hyphen;
    const bool space =
        place.end < place.next && line.text[place.end] == ' ' && place.next < line.text.size();
    bytes.kept = space ? place.end + 1 : place.end;
    const Length indent =
        lines.size() < measure.indents.size() ? measure.indents[lines.size()] : Length{};
    lines.push_back(set_line(line, bytes, indent, setting));
    bytes.begin = place.next;
  }
  return lines;
}

Frame stacked(const std::vector<SetLine>& lines, document::Role role, Length width,
              const Setting& setting) {
  const Length leading = setting.style.of(role).leading;
  const Length baseline = first_baseline(role, setting);
  Frame frame;
  frame.width = width;
  frame.height = leading * static_cast<int>(lines.size());
  int row = 0;
  for (const SetLine& line : lines) {
    place({{}, {}, line.items}, {{}, baseline + leading * row}, frame.items);
    ++row;
  }
  return frame;
}

ContentWidths content_widths(const InlineText& line, const Setting& setting) {
  constexpr Length kNoLimit = {1'000'000'000};
  ContentWidths widths;
  Length start;
  Length stretch_start;
  for (const Stop& stop : stops_of(line, kNoLimit, setting).measures) {
    widths.least = std::max(widths.least, stop.end - start);
    widths.most = std::max(widths.most, stop.end - stretch_start);
    start = stop.next;
    if (stop.mandatory) stretch_start = stop.next;
  }
  return widths;
}

Frame set_words(const document::Text& text, document::Role role, Length width, TagId tag,
                const Setting& setting) {
  const InlineText line = inline_text(text, role, tag, setting);
  return stacked(set_lines(line, {width}, setting), role, width, setting);
}

}  // namespace winchbook::layout
