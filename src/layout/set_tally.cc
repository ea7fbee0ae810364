#include "layout/set_tally.h"

#include <algorithm>
#include <utility>

#include "layout/shapes.h"

namespace winchbook::layout {
namespace {

using base::points;
using document::Role;
using document::Sign;
using document::Tally;

constexpr std::size_t kInRow = 4;
constexpr Length kRule = points(0.75);
constexpr Length kUnderRule = points(3.75);
constexpr Length kBetween = points(15);
constexpr Length kUnderRow = points(7.5);

document::Text signed_words(Sign sign, const std::string& spoken, const std::string& words) {
  return {{document::SignRun{sign, spoken}, document::Run{words}}, {}};
}

class TallySetter {
 public:
  TallySetter(const Tally& tally, TagId parent, const Setting& setting)
      : tally_(tally), setting_(setting) {
    list_ = setting.add_tag({.type = TagType::list, .parent = parent});
  }

  /// The figures from `first` on, `count` of them, over a width.
  [[nodiscard]] Frame row(std::size_t first, std::size_t count, Length left, Length width) const {
    const int columns = static_cast<int>(std::min(kInRow, tally_.figures.size()));
    const Length column = (width - kBetween * (columns - 1)) / columns;
    Frame frame;
    frame.width = setting_.style.frame_width();
    Length x = left;
    for (std::size_t i = first; i < first + count; ++i) {
      const Frame one = figure(tally_.figures[i], column);
      place(one, {x, {}}, frame.items);
      frame.height = std::max(frame.height, one.height);
      x += column + kBetween;
    }
    frame.height += kUnderRow;
    return frame;
  }

 private:
  [[nodiscard]] Frame figure(const Tally::Figure& figure, Length width) const {
    const TagId item = setting_.add_tag({.type = TagType::list_item, .parent = list_});
    const TagId label = setting_.add_tag({.type = TagType::label, .parent = item});
    const TagId body = setting_.add_tag({.type = TagType::list_body, .parent = item});
    Frame frame;
    frame.width = width;
    frame.items.emplace_back(filled_box({{}, {}, width, kRule}, setting_.style.ink, kArtifact));
    frame.height = kUnderRule;
    const auto add = [&](const document::Text& words, Role role, TagId tag) {
      const Frame set = set_words(words, role, width, tag, setting_);
      place(set, {{}, frame.height}, frame.items);
      frame.height += set.height;
    };
    add(document::plain(figure.name), Role::label, label);
    const auto paragraph = [&] {
      return setting_.add_tag({.type = TagType::paragraph, .parent = body});
    };
    add(signed_words(Sign::found, tally_.found_spoken, figure.found), Role::tally, paragraph());
    add(signed_words(Sign::left, tally_.left_spoken, figure.left), Role::tally, paragraph());
    if (!figure.note.empty()) add(document::plain(figure.note), Role::caption, paragraph());
    return frame;
  }

  const Tally& tally_;
  const Setting& setting_;
  TagId list_ = kArtifact;
};

}  // namespace

void add_tally(const Tally& tally, TagId parent, const Setting& setting, Slices& slices) {
  if (tally.figures.empty()) return;
  const document::Style& style = setting.style;
  const bool full = tally.width == document::Width::full;
  const Length left = full ? Length{} : style.side + style.gutter;
  const Length width = full ? style.frame_width() : style.main;
  const auto add = [&](Frame frame) {
    Slice slice;
    slice.full = full;
    slice.frame = std::move(frame);
    slices.add(std::move(slice));
  };
  slices.start_block(style.line);
  const TallySetter setter(tally, parent, setting);
  for (std::size_t i = 0; i < tally.figures.size(); i += kInRow)
    add(setter.row(i, std::min(kInRow, tally.figures.size() - i), left, width));
  if (!tally.below.empty()) {
    slices.slices.back().keep_with_next = true;
    const TagId tag = setting.add_tag({.type = TagType::paragraph, .parent = parent});
    const Frame words = set_words(tally.below, Role::caption, width, tag, setting);
    Frame frame{style.frame_width(), words.height, {}};
    place(words, {left, {}}, frame.items);
    add(std::move(frame));
  }
  slices.below = style.line;
}

}  // namespace winchbook::layout
