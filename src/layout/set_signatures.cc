#include "layout/set_signatures.h"

#include <algorithm>

#include "layout/shapes.h"

namespace winchbook::layout {
namespace {

using base::points;
using document::Role;

constexpr Length kPen = points(30);    // room for a hand
constexpr Length kOver = points(7.5);  // clear of what it is signed for
constexpr Length kRule = points(0.5);
constexpr Length kUnderRule = points(3.75);

/// A line to write on from `left`, and the words under it; returns how far these reach down.
Length add_line(Length left, Length top, Length width, const Frame& words, const Setting& setting,
                Frame& frame) {
  frame.items.emplace_back(
      filled_box({left, top - kRule, width, kRule}, setting.style.ink2, kArtifact));
  place(words, {left, top + kUnderRule}, frame.items);
  return top + kUnderRule + words.height;
}

}  // namespace

Frame set_signatures(const document::Signatures& signatures, TagId parent, const Setting& setting) {
  const document::Style& style = setting.style;
  const auto paragraph = [&] {
    return setting.add_tag({.type = TagType::paragraph, .parent = parent});
  };
  Frame frame;
  frame.width = style.frame_width();
  Length top = kOver;
  if (!signatures.above.empty()) {
    const Frame above =
        set_words(signatures.above, Role::small_reading, style.frame_width(), paragraph(), setting);
    place(above, {{}, top}, frame.items);
    top += above.height;
  }
  const Length column = (style.side - style.gutter) / 2;
  const Length half = style.side + style.gutter + column + style.gutter;
  Length left;
  Length foot = top;
  for (const document::Signatures::Place& one : signatures.places) {
    document::Text who;
    who.parts.emplace_back(document::Run{.text = one.whose, .bold = true});
    if (!one.name.empty()) {
      who.parts.emplace_back(document::LineEnd{});
      who.parts.emplace_back(document::Run{one.name});
    }
    const Frame name = set_words(who, Role::side_note, style.side, paragraph(), setting);
    const Frame date =
        set_words(document::plain(one.date), Role::side_note, column, paragraph(), setting);
    foot = std::max(foot, add_line(left, top + kPen, style.side, name, setting, frame));
    foot = std::max(
        foot, add_line(left + style.side + style.gutter, top + kPen, column, date, setting, frame));
    left += half;
  }
  frame.height = foot;
  return frame;
}

}  // namespace winchbook::layout
