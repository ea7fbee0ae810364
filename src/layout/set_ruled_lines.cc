#include "layout/set_ruled_lines.h"

#include <algorithm>
#include <utility>

#include "layout/shapes.h"

namespace winchbook::layout {
namespace {

using base::points;
using document::Role;

constexpr Length kPitch = points(22.5);  // room for a pen
constexpr Length kRule = points(0.5);
constexpr Length kOverRule = points(2.25);

}  // namespace

std::vector<Frame> set_ruled_lines(const document::RuledLines& lines, TagId parent,
                                   const Setting& setting) {
  std::vector<Frame> frames;
  const Length left = setting.style.side + setting.style.gutter;
  for (const std::string& label : lines.labels) {
    Tag paragraph;
    paragraph.parent = parent;
    const TagId tag = setting.add_tag(std::move(paragraph));
    const Frame words =
        set_words(document::plain(label), Role::side_note, setting.style.side, tag, setting);
    Frame frame;
    frame.width = setting.style.frame_width();
    const Length baseline = kPitch - kOverRule;
    const Length top = baseline - first_baseline(Role::side_note, setting);
    place(words, {Length{}, top}, frame.items);
    const int count = std::max(1, lines.lines_each);
    for (int i = 1; i <= count; ++i) {
      frame.items.emplace_back(filled_box({left, kPitch * i - kRule, setting.style.main, kRule},
                                          setting.style.ink2, kArtifact));
    }
    frame.height = std::max(kPitch * count, top + words.height);
    frames.push_back(std::move(frame));
  }
  return frames;
}

}  // namespace winchbook::layout
