#include "layout/set_opening.h"

#include <algorithm>
#include <array>
#include <utility>

#include "layout/set_beside.h"
#include "layout/set_entry.h"
#include "layout/set_words.h"
#include "layout/shapes.h"

namespace winchbook::layout {
namespace {

using base::points;
using document::Ledger;
using document::Role;

constexpr Length kRule = points(0.75);
constexpr Length kOverTitle = points(15);
constexpr Length kUnderTitle = points(15);
constexpr Length kOverStandFirst = points(3);
constexpr Length kUnderStandFirst = points(19.5);
constexpr Length kBeforeChapter = points(30);
constexpr std::size_t kMostLines = 3;

PathItem opening_rule(const document::Chapter& chapter, const Setting& setting) {
  const Length width = setting.style.frame_width();
  if (chapter.ledger == Ledger::second) return dashed_rule({}, width, setting);
  return filled_box({{}, {}, width, kRule}, setting.style.ink, kArtifact);
}

struct Title {
  Role role = Role::chapter_title;
  std::vector<SetLine> lines;
};

Title set_title(const document::Chapter& chapter, TagId tag, const Setting& setting) {
  const bool second = chapter.ledger == Ledger::second;
  const Role first = second ? Role::second_ledger_title : Role::chapter_title;
  Title title;
  for (const Role role : {first, Role::chapter_title_2, Role::chapter_title_3}) {
    title.role = role;
    // The smaller sizes are upright: the second ledger's title stays in italics.
    document::Run words{chapter.title};
    words.italic = second && role != first;
    title.lines =
        set_lines(inline_text({{words}, {}}, role, tag, setting), {setting.style.main}, setting);
    if (title.lines.size() <= kMostLines) break;
  }
  return title;
}

Length up_to_grid(Length height, Length line) {
  return line * ((height.thousandths + line.thousandths - 1) / line.thousandths);
}

}  // namespace

Slice set_opening(const document::Chapter& chapter, TagType level, TagId section,
                  const Setting& setting) {
  const document::Style& style = setting.style;
  const Length left = style.side + style.gutter;
  Slice slice;
  Frame& frame = slice.frame;
  frame.width = style.frame_width();
  frame.items.emplace_back(opening_rule(chapter, setting));
  // The eyebrow is heard before the title it stands beside.
  Frame eyebrow;
  if (!chapter.eyebrow.empty()) {
    const TagId tag = setting.add_tag({.type = TagType::paragraph, .parent = section});
    eyebrow = set_words(document::plain(chapter.eyebrow), Role::eyebrow, style.side, tag, setting);
  }
  const Title title =
      set_title(chapter, setting.add_tag({.type = level, .parent = section}), setting);
  const Frame set = stacked(title.lines, title.role, style.main, setting);
  const Length baseline = kOverTitle + first_baseline(title.role, setting);
  place(eyebrow, {{}, baseline - first_baseline(Role::eyebrow, setting)}, frame.items);
  place(set, {left, kOverTitle}, frame.items);
  Length foot = kOverTitle + set.height;
  if (chapter.stand_first.empty()) {
    foot += kUnderTitle;
  } else {
    const TagId tag = setting.add_tag({.type = TagType::paragraph, .parent = section});
    const Frame words = set_words(document::plain(chapter.stand_first), Role::stand_first,
                                  style.main, tag, setting);
    place(words, {left, foot + kOverStandFirst}, frame.items);
    foot += kOverStandFirst + words.height + kUnderStandFirst;
  }
  const Length margin = baseline + eyebrow.height;
  frame.height = up_to_grid(std::max(foot, margin), style.line);
  slice.full = true;
  slice.heading = true;
  slice.starts_block = true;
  slice.above = kBeforeChapter;
  slice.anchors.push_back(chapter.id);
  slice.bookmark = BookmarkAt{chapter.title, 0};
  return slice;
}

ChapterFurniture chapter_furniture(const document::Chapter& chapter, const Setting& setting) {
  const document::Style& style = setting.style;
  ChapterFurniture furniture;
  furniture.ledger = chapter.ledger;
  furniture.starts_page = chapter.starts_page;
  furniture.keeps_together = chapter.keeps_together;
  furniture.continued.width = style.frame_width();
  furniture.continued.items.emplace_back(opening_rule(chapter, setting));
  furniture.continued_body = kOverTitle;
  const std::string& words =
      chapter.eyebrow_continued.empty() ? chapter.eyebrow : chapter.eyebrow_continued;
  const Frame eyebrow =
      set_words(document::plain(words), Role::eyebrow, style.side, kArtifact, setting);
  const Length top =
      kOverTitle + first_baseline(Role::reading, setting) - first_baseline(Role::eyebrow, setting);
  place(eyebrow, {{}, top}, furniture.continued.items);
  furniture.continued.height = kOverTitle + eyebrow.height;
  furniture.continued_margin =
      eyebrow.height.thousandths == 0
          ? kOverTitle
          : kOverTitle + eyebrow.height + style.of(Role::side_note).leading + margin_drop(setting);
  return furniture;
}

}  // namespace winchbook::layout
