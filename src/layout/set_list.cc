#include "layout/set_list.h"

#include <algorithm>
#include <string>
#include <utility>

#include "layout/set_beside.h"
#include "layout/set_paragraph.h"

namespace winchbook::layout {
namespace {

using base::points;
using document::Role;
using document::Width;

constexpr Length kItemIndent = points(15);
constexpr Length kFactGap = points(3.75);

/// Links a paragraph's lines to a label that stands before the first of them.
void put_before(Slice& first, const Frame& label, Length left) {
  Frame with_label = std::move(first.frame);
  std::vector<Item> items = std::exchange(with_label.items, {});
  place(label, {left, {}}, with_label.items);
  std::move(items.begin(), items.end(), std::back_inserter(with_label.items));
  first.frame = std::move(with_label);
}

}  // namespace

void add_list(const document::List& list, TagId parent, const Setting& setting, Slices& slices) {
  const Length left = setting.style.side + setting.style.gutter;
  Tag element{.type = TagType::list, .parent = parent};
  element.numbered = list.numbered;
  const TagId tag = setting.add_tag(std::move(element));
  int number = 0;
  for (const document::Text& words : list.items) {
    ++number;
    const TagId item = setting.add_tag({.type = TagType::list_item, .parent = tag});
    const TagId label = setting.add_tag({.type = TagType::label, .parent = item});
    const TagId body = setting.add_tag({.type = TagType::list_body, .parent = item});
    const std::string sign = list.numbered ? std::to_string(number) + "." : "\u2022";
    const Frame set_sign =
        set_words(document::plain(sign), Role::reading, kItemIndent * 2, label, setting);
    const Length indent = std::max(kItemIndent, setting.width(Role::reading, sign) + points(3.75));
    const std::vector<SetLine> lines = set_lines(inline_text(words, Role::reading, body, setting),
                                                 {setting.style.main - indent}, setting);
    if (lines.empty()) continue;
    slices.start_block({});
    const std::size_t at = add_lines(lines, Role::reading, left + indent, setting, slices);
    put_before(slices.slices[at], set_sign, left);
  }
}

void add_facts(const document::Facts& facts, TagId parent, const Setting& setting, Slices& slices) {
  const document::Style& style = setting.style;
  const bool full = facts.width == Width::full;
  const Length left = full ? Length{} : style.side + style.gutter;
  const Length label_width = points(facts.label_width);
  const Length width = (full ? style.frame_width() : style.main) - label_width;
  const TagId tag =
      setting.add_tag({.type = TagType::list, .parent = parent, .caution = facts.warns});
  slices.start_block(style.line);
  const std::size_t first = slices.slices.size();
  for (const document::Entry::Fact& fact : facts.facts) {
    const TagId item = setting.add_tag({.type = TagType::list_item, .parent = tag});
    const TagId label = setting.add_tag({.type = TagType::label, .parent = item});
    const Frame name = set_words(document::plain(fact.label), Role::label, label_width - points(6),
                                 label, setting);
    const TagId body = setting.add_tag({.type = TagType::list_body, .parent = item});
    const Frame words = set_words(fact.words, Role::table, width, body, setting);
    Slice slice;
    slice.full = full;
    slice.frame.width = style.frame_width();
    place(name, {left, first_baseline(Role::table, setting) - first_baseline(Role::label, setting)},
          slice.frame.items);
    place(words, {left + label_width, {}}, slice.frame.items);
    slice.frame.height = std::max(name.height, words.height) + kFactGap;
    slices.add(std::move(slice));
  }
  slices.below = style.line;
  if (first == slices.slices.size()) return;
  // Beside facts as wide as the frame nothing can stand: it follows under them.
  Slice& host = full ? slices.slices.back() : slices.slices[first];
  host.beside = set_beside(facts.beside, parent, setting);
}

void add_notes(const document::Notes& notes, TagId parent, const Setting& setting, Slices& slices) {
  if (notes.notes.empty()) return;
  InlineText line;
  int number = 0;
  std::vector<std::string> anchors;
  for (const document::Text& words : notes.notes) {
    ++number;
    Tag note{.type = TagType::note, .parent = parent};
    note.id = "note-" + std::to_string(setting.tags.size());
    const TagId tag = setting.add_tag(std::move(note));
    const TagId label = setting.add_tag({.type = TagType::label, .parent = tag});
    document::Run lead{std::to_string(number) + "\u00A0\u00A0"};
    lead.bold = true;
    append_words(line, {{lead}, {}}, Role::caption, label, setting);
    append_words(line, words, Role::caption, tag, setting);
    const bool last = static_cast<std::size_t>(number) == notes.notes.size();
    if (!last) append_words(line, document::plain("\u2003 "), Role::caption, tag, setting);
    anchors.push_back(setting.chapter + "-note-" + std::to_string(number));
  }
  const std::vector<SetLine> lines = set_lines(line, {setting.style.main}, setting);
  slices.start_block(setting.style.line);
  const Length left = setting.style.side + setting.style.gutter;
  const std::size_t at = add_lines(lines, Role::caption, left, setting, slices);
  if (at < slices.slices.size()) slices.slices[at].anchors = std::move(anchors);
  slices.below = setting.style.line;
}

}  // namespace winchbook::layout
