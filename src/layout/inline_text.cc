#include "layout/inline_text.h"

#include <algorithm>
#include <utility>

#include "layout/characters.h"

namespace winchbook::layout {
namespace {

using document::Role;
using document::TypeStyle;

/// Where and how the next words are set.
struct Stretch {
  Role role = Role::reading;
  Manner manner;
  Length raise;
  int link = -1;
  TagId tag = kArtifact;
};

/// The faces that a character may come from, the role's own first.
std::vector<text::FaceId> faces_for(const Stretch& stretch, const Setting& setting) {
  std::vector<text::FaceId> faces = {setting.face(stretch.role, stretch.manner)};
  for (const std::string& name : setting.style.fallback)
    faces.push_back(setting.fonts.face(name));
  return faces;
}

bool has_all(text::FaceId face, std::string_view words, const Setting& setting) {
  for (std::size_t at = 0; at < words.size();) {
    const char32_t character = next_character(words, at);
    if (!leaves_no_mark(character) && !setting.fonts.has(face, character)) return false;
  }
  return true;
}

/// The first face that has every character of `cluster`; the role's own when none has.
std::size_t face_of(std::string_view cluster, const std::vector<text::FaceId>& faces,
                    const Setting& setting) {
  for (std::size_t i = 0; i < faces.size(); ++i) {
    if (has_all(faces[i], cluster, setting)) return i;
  }
  return 0;
}

void append_span(InlineText& line, std::string_view words, text::FaceId face,
                 const Stretch& stretch, const Setting& setting) {
  const TypeStyle& type = setting.style.of(stretch.role);
  Span span;
  span.begin = static_cast<std::uint32_t>(line.text.size());
  span.end = static_cast<std::uint32_t>(span.begin + words.size());
  span.face = face;
  span.size = type.size;
  span.raise = stretch.raise;
  span.colour = type.colour;
  span.tracking = type.tracking;
  span.small_capitals = stretch.manner.small_capitals;
  span.link = stretch.link;
  span.tag = stretch.tag;
  std::vector<std::string> features = type.features;
  if (span.small_capitals) features.emplace_back("smcp");
  span.glyphs = setting.fonts.shape(face, words, features, line.language).glyphs;
  const int em = setting.fonts.metrics(face).units_per_em;
  std::int64_t units = 0;
  int before = 0;
  const auto place_now = [&] {
    return line.right + base::scaled(span.size, units, em) +
           base::scaled(span.size, std::int64_t{span.tracking} * before, 1000);
  };
  for (const text::Glyph& glyph : span.glyphs) {
    span.places.push_back(place_now());
    units += glyph.advance;
    ++before;
  }
  span.right = place_now();
  line.right = span.right;
  line.text += words;
  line.spans.push_back(std::move(span));
}

/// Shapes `words`, taking other faces for the characters that the role's own lacks.
void append_stretch(InlineText& line, std::string_view words, const Stretch& stretch,
                    const Setting& setting) {
  if (words.empty()) return;
  const std::vector<text::FaceId> faces = faces_for(stretch, setting);
  if (faces.size() == 1 || has_all(faces.front(), words, setting)) {
    append_span(line, words, faces.front(), stretch, setting);
    return;
  }
  std::size_t begin = 0;
  std::size_t end = 0;
  std::size_t current = 0;
  for (const std::uint32_t next : text::character_ends(words, line.language)) {
    const std::size_t face = face_of(words.substr(end, next - end), faces, setting);
    if (face != current && end > begin) {
      append_span(line, words.substr(begin, end - begin), faces[current], stretch, setting);
      begin = end;
    }
    current = face;
    end = next;
  }
  append_span(line, words.substr(begin), faces[current], stretch, setting);
}

int add_link(InlineText& line, const std::string& target, TagId parent, const Setting& setting) {
  InlineLink link;
  link.target = target;
  link.tag = setting.add_tag({.type = TagType::link, .parent = parent});
  line.links.push_back(std::move(link));
  return static_cast<int>(line.links.size() - 1);
}

/// Appends one paragraph's parts, knowing the role and tag around them.
class Appender {
 public:
  Appender(InlineText& line, Role role, TagId tag, const Setting& setting, Lead lead)
      : line_(line), role_(role), tag_(tag), setting_(setting), lead_(lead) {}

  void operator()(const document::Run& run) {
    Stretch stretch;
    stretch.role = role_;
    stretch.manner = {run.italic, run.bold, run.small_capitals};
    stretch.tag = tag_;
    if (!run.link.empty() && tag_ != kArtifact) {
      const bool goes_on = !line_.links.empty() && line_.links.back().target == run.link &&
                           !line_.spans.empty() && line_.spans.back().link >= 0;
      stretch.link = goes_on ? static_cast<int>(line_.links.size() - 1)
                             : add_link(line_, run.link, tag_, setting_);
      InlineLink& link = line_.links[static_cast<std::size_t>(stretch.link)];
      link.words += run.text;
      stretch.tag = link.tag;
    }
    const std::string words =
        setting_.style.of(role_).capitals ? text::upper_case(run.text, line_.language) : run.text;
    append_lines(words, stretch);
  }

  void operator()(const document::SignRun& run) {
    SignAt sign;
    sign.offset = static_cast<std::uint32_t>(line_.text.size());
    sign.sign = run.sign;
    sign.place = line_.right;
    sign.colour = setting_.style.of(role_).colour;
    if (!run.spoken.empty() && tag_ != kArtifact) {
      sign.tag = setting_.add_tag(
          {.type = TagType::span, .parent = tag_, .actual_text = run.spoken + " "});
    }
    line_.signs.push_back(sign);
    line_.right += sign_advance(run.sign);
  }

  void operator()(const document::NoteMark& mark) {
    line_.marks.push_back(static_cast<std::uint32_t>(line_.text.size()));
    Stretch stretch;
    stretch.role = Role::note_mark;
    stretch.tag = tag_;
    stretch.raise = setting_.style.of(role_).size * 36 / 100;
    if (tag_ != kArtifact) {
      const TagId reference = setting_.add_tag({.type = TagType::reference, .parent = tag_});
      const std::string number = std::to_string(mark.number);
      stretch.link =
          add_link(line_, "#" + setting_.chapter + "-note-" + number, reference, setting_);
      InlineLink& link = line_.links.back();
      link.words = number;
      stretch.tag = link.tag;
    }
    append_stretch(line_, std::to_string(mark.number), stretch, setting_);
  }

  void operator()(const document::LineEnd& /*end*/) { line_.text += '\n'; }

 private:
  /// A line feed inside a run ends the line as LineEnd does; it is never shaped.
  void append_lines(std::string_view words, const Stretch& stretch) {
    while (true) {
      const std::size_t feed = words.find('\n');
      append_lead(words.substr(0, feed), stretch);
      if (feed == std::string_view::npos) return;
      line_.text += '\n';
      words.remove_prefix(feed + 1);
    }
  }

  void append_lead(std::string_view words, const Stretch& stretch) {
    const std::size_t here = line_.text.size();
    const std::size_t small = lead_.small_capitals > here
                                  ? std::min<std::size_t>(lead_.small_capitals - here, words.size())
                                  : 0;
    Stretch capitals = stretch;
    capitals.manner.small_capitals = true;
    if (lead_.tag != kArtifact && capitals.link < 0) capitals.tag = lead_.tag;
    append_stretch(line_, words.substr(0, small), capitals, setting_);
    append_stretch(line_, words.substr(small), stretch, setting_);
  }

  InlineText& line_;
  Role role_;
  TagId tag_;
  const Setting& setting_;
  Lead lead_;
};

/// The end of what is seen of text[begin, end): spaces at a line's end take no room.
std::uint32_t seen_end(std::string_view text, std::uint32_t begin, std::uint32_t end) {
  std::uint32_t seen = begin;
  for (std::size_t at = begin; at < end;) {
    if (!vanishes_at_line_end(next_character(text, at))) seen = static_cast<std::uint32_t>(at);
  }
  return seen;
}

Length hyphen_width(const InlineText& line, std::uint32_t offset, const Setting& setting) {
  for (const Span& span : line.spans) {
    if (offset <= span.begin || offset > span.end) continue;
    const text::Shaped hyphen = setting.fonts.shape(span.face, "-", {}, line.language);
    return base::scaled(span.size, hyphen.width, setting.fonts.metrics(span.face).units_per_em);
  }
  return {};
}

}  // namespace

Length InlineText::place_of(std::uint32_t offset) const {
  Length place = right;
  bool found = false;
  const auto span =
      std::upper_bound(spans.begin(), spans.end(), offset,
                       [](std::uint32_t at, const Span& candidate) { return at < candidate.end; });
  if (span != spans.end()) {
    found = true;
    if (offset <= span->begin) {
      place = span->places.empty() ? span->right : span->places.front();
    } else {
      const auto glyph = std::lower_bound(
          span->glyphs.begin(), span->glyphs.end(), offset - span->begin,
          [](const text::Glyph& candidate, std::uint32_t at) { return candidate.cluster < at; });
      place = glyph == span->glyphs.end()
                  ? span->right
                  : span->places[static_cast<std::size_t>(glyph - span->glyphs.begin())];
    }
  }
  if (!found) return right;
  for (const SignAt& sign : signs) {
    if (sign.offset == offset) return std::min(place, sign.place);
  }
  return place;
}

void append_words(InlineText& line, const document::Text& words, Role role, TagId tag,
                  const Setting& setting, const Lead& lead) {
  if (line.language.empty()) {
    line.language = words.language.empty() ? setting.language : words.language;
  }
  Appender appender(line, role, tag, setting, lead);
  for (const document::Inline& part : words.parts)
    std::visit(appender, part);
}

InlineText inline_text(const document::Text& words, Role role, TagId tag, const Setting& setting) {
  InlineText line;
  append_words(line, words, role, tag, setting);
  return line;
}

InlineStops stops_of(const InlineText& line, Length narrowest, const Setting& setting) {
  InlineStops stops;
  if (line.spans.empty() && line.signs.empty()) return stops;
  std::vector<std::uint32_t> characters;
  std::uint32_t begin = 0;
  const auto add = [&](std::uint32_t end, std::uint32_t next, bool mandatory, bool hyphen) {
    const bool whole = next >= line.text.size();
    const Length width = hyphen ? hyphen_width(line, end, setting) : Length{};
    const Length right = whole && end == next ? line.right : line.place_of(end);
    stops.places.push_back({end, next, hyphen});
    stops.measures.push_back(
        {right + width, whole ? line.right : line.place_of(next), mandatory, hyphen});
  };
  std::vector<text::BreakOpportunity> opportunities = text::line_breaks(line.text, line.language);
  if (opportunities.empty()) opportunities.push_back({0, true, false});
  for (const text::BreakOpportunity& opportunity : opportunities) {
    const std::uint32_t next = opportunity.offset;
    const bool before_mark =
        std::find(line.marks.begin(), line.marks.end(), next) != line.marks.end();
    if (before_mark && !opportunity.mandatory && next < line.text.size()) continue;
    const std::uint32_t end = seen_end(line.text, begin, next);
    if (line.place_of(end) - line.place_of(begin) > narrowest) {
      if (characters.empty()) characters = text::character_ends(line.text, line.language);
      for (auto cut = std::upper_bound(characters.begin(), characters.end(), begin);
           cut != characters.end() && *cut < end; ++cut) {
        add(*cut, *cut, false, false);
      }
    }
    add(end, next, opportunity.mandatory, opportunity.hyphen);
    begin = next;
  }
  return stops;
}

}  // namespace winchbook::layout
