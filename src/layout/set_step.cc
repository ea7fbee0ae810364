#include "layout/set_step.h"

#include <algorithm>
#include <string>
#include <utility>

#include "layout/set_beside.h"
#include "layout/shapes.h"

namespace winchbook::layout {
namespace {

using base::points;
using document::Role;
using document::Step;

constexpr Length kRule = points(0.35);
constexpr Length kOver = points(3.75);  // between the rule and the first line
constexpr Length kUnder = points(6);
constexpr Length kNumbers = points(30);  // the column of the numbers
constexpr Length kWritten = points(21);  // a line to write a number on
constexpr Length kBoxes = points(45);    // the column of the boxes, its gap included
constexpr Length kBox = points(10.5);
constexpr Length kBoxStroke = points(0.8);
constexpr Length kBoxGap = points(4.5);
constexpr Length kLabels = points(57);
constexpr Length kFactGap = points(2);
constexpr Length kUnit = points(3.75);

Length left_of_main(const Setting& setting) {
  return setting.style.side + setting.style.gutter;
}

class StepSetter {
 public:
  StepSetter(const Step& step, TagId list, const Setting& setting)
      : step_(step), setting_(setting), left_(left_of_main(setting)) {
    item_ = setting.add_tag({.type = TagType::list_item, .parent = list});
    label_ = setting.add_tag({.type = TagType::label, .parent = item_});
    body_ = setting.add_tag({.type = TagType::list_body, .parent = item_});
    slice_.frame.width = setting.style.frame_width();
  }

  Slice set() {
    slice_.frame.items.emplace_back(step_rule(setting_));
    // A warning is heard before the work that it warns about.
    slice_.beside = set_beside(step_.beside, body_, setting_);
    for (SideItem& item : slice_.beside)
      item.drop += kOver;
    slice_.level_with_margin = !step_.beside.empty();
    put_number();
    const Length words = put_words();
    const Length foot = std::max(put_boxes(), put_facts(words));
    const Length height = foot + kUnder;
    const int units = (height.thousandths + kUnit.thousandths - 1) / kUnit.thousandths;
    slice_.frame.height = kUnit * units;
    if (!step_.anchor.empty()) slice_.anchors.push_back(step_.anchor);
    return std::move(slice_);
  }

 private:
  void put_number() {
    const Length baseline = kOver + first_baseline(Role::reading, setting_);
    if (step_.number.empty()) {
      const Stroke stroke{points(0.5), setting_.style.ink2};
      slice_.frame.items.emplace_back(
          drawn_line({left_, baseline}, {left_ + kWritten, baseline}, stroke, kArtifact));
      return;
    }
    const Frame number =
        set_words(document::plain(step_.number), Role::entry_name, kNumbers, label_, setting_);
    place(number, {left_, baseline - first_baseline(Role::entry_name, setting_)},
          slice_.frame.items);
  }

  /// What is done; returns its foot.
  Length put_words() {
    const Length right = step_.boxes.empty() ? Length{} : kBoxes;
    const TagId tag = setting_.add_tag({.type = TagType::paragraph, .parent = body_});
    const Frame words =
        set_words(step_.what, Role::reading, setting_.style.main - kNumbers - right, tag, setting_);
    place(words, {left_ + kNumbers, kOver}, slice_.frame.items);
    return kOver + words.height;
  }

  /// Box under box at the right edge, each with its word before it; returns the lowest foot.
  Length put_boxes() {
    const Length line = setting_.style.line;
    const Length right = left_ + setting_.style.main;
    Length baseline = kOver + first_baseline(Role::reading, setting_);
    Length foot;
    for (const std::string& box : step_.boxes) {
      const TagId tag = setting_.add_tag({.type = TagType::paragraph, .parent = body_});
      const Length width = setting_.width(Role::label, box);
      const Frame word =
          set_words(document::plain(box), Role::label, width + points(1), tag, setting_);
      const Length box_left = right - kBox;
      place(word, {box_left - kBoxGap - width, baseline - first_baseline(Role::label, setting_)},
            slice_.frame.items);
      // Its middle stands level with that of the word's capitals.
      const Length top = baseline - points(2.8) - kBox / 2;
      slice_.frame.items.emplace_back(
          outlined_box({box_left, top, kBox, kBox}, {kBoxStroke, setting_.style.ink}, kArtifact));
      foot = top + kBox;
      baseline += line;
    }
    return foot;
  }

  Length put_facts(Length y) {
    if (step_.facts.empty()) return y;
    const TagId list = setting_.add_tag({.type = TagType::list, .parent = body_});
    const Length left = left_ + kNumbers;
    const Length narrow = step_.boxes.empty() ? Length{} : kBoxes;
    const Length beside_boxes = kOver + setting_.style.line * static_cast<int>(step_.boxes.size());
    for (const document::Entry::Fact& fact : step_.facts) {
      y += kFactGap;
      const TagId item = setting_.add_tag({.type = TagType::list_item, .parent = list});
      const TagId label = setting_.add_tag({.type = TagType::label, .parent = item});
      const Frame name =
          set_words(document::plain(fact.label), Role::label, kLabels - points(6), label, setting_);
      const TagId body = setting_.add_tag({.type = TagType::list_body, .parent = item});
      const Length right = y < beside_boxes ? narrow : Length{};
      const Frame words =
          set_words(fact.words, Role::table, setting_.style.main - kNumbers - kLabels - right, body,
                    setting_);
      const Length level =
          first_baseline(Role::table, setting_) - first_baseline(Role::label, setting_);
      place(name, {left, y + level}, slice_.frame.items);
      place(words, {left + kLabels, y}, slice_.frame.items);
      y += std::max(name.height, words.height);
    }
    return y;
  }

  const Step& step_;
  const Setting& setting_;
  Length left_;
  TagId item_ = kArtifact;
  TagId label_ = kArtifact;
  TagId body_ = kArtifact;
  Slice slice_;
};

}  // namespace

PathItem step_rule(const Setting& setting) {
  const Length left = left_of_main(setting);
  return drawn_line({left, {}}, {left + setting.style.main, {}}, {kRule, setting.style.ink2},
                    kArtifact);
}

void add_step(const Step& step, TagId list, const Setting& setting, Slices& slices) {
  slices.add(StepSetter(step, list, setting).set());
}

}  // namespace winchbook::layout
