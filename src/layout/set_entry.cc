#include "layout/set_entry.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "layout/picture.h"
#include "layout/shapes.h"

namespace winchbook::layout {
namespace {

using base::points;
using document::Entry;
using document::Photograph;
using document::Role;

constexpr Length kLeastHeight = points(93.75);
constexpr Length kUnit = points(3.75);
constexpr Length kBaseline = points(21.75);  // of letter and name, below the rule
constexpr Length kNameLeft = points(27.5);
constexpr Length kPictureTop = points(29.5);
constexpr Length kPictureWidth = points(69.75);
constexpr Length kPictureHeight = points(60);
constexpr Length kFactsTop = points(6);
constexpr Length kLabels = points(57);
constexpr Length kLabelGap = points(6);
constexpr Length kInk = points(0.75);

class EntrySetter {
 public:
  EntrySetter(const Entry& entry, TagId parent, const Setting& setting)
      : entry_(entry), parent_(parent), setting_(setting) {
    frame_.width = setting.style.frame_width();
  }

  Frame set() {
    frame_.items.emplace_back(dashed_rule({Length{}, kInk / 2}, frame_.width, setting_));
    const Length lower = put_name();
    const Length left = put_pictures(kPictureTop + lower);
    const Length right = put_facts();
    const Length height = std::max({has_pictures() ? kLeastHeight : Length{}, left, right});
    // Whole units, so that entries of any height meet the page's grid again.
    const int units = (height.thousandths + kUnit.thousandths - 1) / kUnit.thousandths;
    frame_.height = kUnit * units;
    return std::move(frame_);
  }

 private:
  TagId tag(TagType type, TagId parent, std::string alternative = {}) {
    Tag element;
    element.type = type;
    element.parent = parent;
    element.alternative = std::move(alternative);
    return setting_.add_tag(std::move(element));
  }

  /// Letter and name on one baseline; returns how much a long name pushes the pictures down.
  Length put_name() {
    const TagId heading = tag(TagType::h3, parent_);
    frame_.items.emplace_back(
        setting_.line(Role::entry_letter, entry_.letter, {Length{}, kBaseline}, heading));
    const Length wide = setting_.width(Role::entry_letter, entry_.letter);
    const Length left = std::max(kNameLeft, wide + points(7.5));
    const Frame name = set_words(document::plain(entry_.name), Role::entry_name,
                                 setting_.style.side - left, heading, setting_);
    place(name, {left, kBaseline - first_baseline(Role::entry_name, setting_)}, frame_.items);
    return std::max(Length{}, name.height - setting_.style.of(Role::entry_name).leading);
  }

  [[nodiscard]] bool has_pictures() const {
    return entry_.old_part || entry_.new_part || !entry_.old_part_absent.empty() ||
           !entry_.new_part_absent.empty();
  }

  /// Returns the foot of the side column.
  Length put_pictures(Length top) {
    // An empty frame is as high as the picture beside it.
    for (const auto& part : {entry_.old_part, entry_.new_part}) {
      if (part) frame_height_ = fitted(*part, kPictureWidth, kPictureHeight).height;
    }
    const Length old_foot = put_part(entry_.old_part, entry_.old_part_absent, {Length{}, top});
    const Length new_foot = put_part(entry_.new_part, entry_.new_part_absent,
                                     {setting_.style.side - kPictureWidth, top});
    return std::max({old_foot, new_foot, top - kUnit}) + kUnit + points(0.25);
  }

  /// Returns the foot of the picture, or of the dashed frame that says why there is none.
  Length put_part(const std::optional<Photograph>& part, const std::string& absent, Point at) {
    if (part) {
      Rect box = fitted(*part, kPictureWidth, kPictureHeight);
      box.x = at.x;
      box.y = at.y;
      add_picture(*part, box, tag(TagType::figure, parent_, part->alternative), setting_, frame_);
      return box.y + box.height;
    }
    if (absent.empty()) return {};
    const Rect box{at.x, at.y, kPictureWidth, frame_height_};
    const Stroke dashes{kInk, setting_.style.ink, {points(3), points(2)}};
    frame_.items.emplace_back(outlined_box(box, dashes, kArtifact));
    return std::max(box.y + box.height, put_reason(absent, box));
  }

  /// Returns the foot of the words, which may be lower than their frame.
  Length put_reason(const std::string& absent, Rect box) {
    Frame words = set_words(document::plain(absent), Role::caption, box.width - points(9),
                            tag(TagType::paragraph, parent_), setting_);
    Length wide;
    for (const Item& item : words.items) {
      if (const auto* text = std::get_if<TextItem>(&item)) {
        wide = std::max(wide, text->origin.x + seen_width_of(*text, setting_.fonts));
      }
    }
    const Length spare = std::max(Length{}, box.height - words.height);
    place(words, {box.x + (box.width - wide) / 2, box.y + spare / 2}, frame_.items);
    return box.y + spare / 2 + words.height;
  }

  /// Returns the foot of the facts.
  Length put_facts() {
    if (entry_.facts.empty()) return {};
    const Length labels = setting_.style.side + setting_.style.gutter;
    const Length texts = labels + kLabels;
    const Length lift =
        first_baseline(Role::small_reading, setting_) - first_baseline(Role::label, setting_);
    const TagId list = tag(TagType::list, parent_);
    Length y = kFactsTop;
    for (const Entry::Fact& fact : entry_.facts) {
      const TagId item = tag(TagType::list_item, list);
      const Frame label = set_words(document::plain(fact.label), Role::label, kLabels - kLabelGap,
                                    tag(TagType::label, item), setting_);
      const Frame words = set_words(fact.words, Role::small_reading, frame_.width - texts,
                                    tag(TagType::list_body, item), setting_);
      place(label, {labels, y + lift}, frame_.items);
      place(words, {texts, y}, frame_.items);
      y += std::max(words.height, label.height);
    }
    return y + points(5.25);
  }

  const Entry& entry_;
  TagId parent_;
  const Setting& setting_;
  Frame frame_;
  Length frame_height_ = kPictureHeight;
};

}  // namespace

PathItem dashed_rule(Point left, Length width, const Setting& setting) {
  const Stroke dashes{kInk, setting.style.ink, {points(3), points(2)}};
  return drawn_line(left, {left.x + width, left.y}, dashes, kArtifact);
}

Frame set_entry(const Entry& entry, TagId parent, const Setting& setting) {
  return EntrySetter(entry, parent, setting).set();
}

}  // namespace winchbook::layout
