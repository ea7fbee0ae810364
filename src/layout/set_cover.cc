#include "layout/set_cover.h"

#include <algorithm>
#include <array>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "layout/picture.h"
#include "layout/shapes.h"

namespace winchbook::layout {
namespace {

using base::points;
using document::Cover;
using document::Role;

constexpr Length kPicture = points(375);
constexpr Length kLeastPicture = points(300);
constexpr Length kMainPicture = points(210);
constexpr Length kCompactPicture = points(180);  // leaves room for a small job on two pages
constexpr Length kUnderPicture = points(30);
constexpr Length kUnderCompactPicture = points(22.5);
constexpr Length kUnderName = points(11.25);
constexpr Length kAboveFoot = points(30);
constexpr Length kRule = points(0.75);
constexpr Length kUnderRule = points(7.5);
constexpr Length kLeastMarks = points(150);
constexpr Length kLeastMarkPitch = points(26.25);
constexpr int kPrintResolution = 150;  // pixels an inch, below which a picture is set smaller
constexpr int kPoorResolution = 75;

document::Text in_lines(const std::vector<std::string>& lines) {
  document::Text text;
  for (const std::string& line : lines) {
    if (!text.parts.empty()) text.parts.emplace_back(document::LineEnd{});
    text.parts.emplace_back(document::Run{line});
  }
  return text;
}

/// The largest of the three sizes at which the name takes three lines, or the last.
Role role_of_name(const Cover& cover, Length width, const Setting& setting) {
  for (const Role role : {Role::cover_name, Role::cover_name_2}) {
    // A thin record's name shares its page with the first chapters.
    if (cover.compact && role == Role::cover_name) continue;
    const Frame trial = set_words(document::plain(cover.name), role, width, kArtifact, setting);
    if (trial.height <= setting.style.of(role).leading * 3) return role;
  }
  return Role::cover_name_3;
}

/// The cover's parts, each set before it is known where it stands.
struct Parts {
  Role name_role = Role::cover_name;
  Frame name;
  Frame stand_first;
  Frame foot_left;
  Frame foot_right;

  [[nodiscard]] Length foot_height() const {
    return kRule + kUnderRule + std::max(foot_left.height, foot_right.height);
  }
  /// Name and stand-first.
  [[nodiscard]] Length words_height() const {
    return name.height +
           (stand_first.height > Length{} ? kUnderName + stand_first.height : Length{});
  }
};

/// Lines of a frame set anew, `pitch` apart.
void respace(Frame& frame, Length pitch, Length first) {
  std::map<Length, int> order;
  for (const Item& item : frame.items) {
    if (const auto* text = std::get_if<TextItem>(&item)) order[text->origin.y] = 0;
  }
  int number = 0;
  for (auto& [baseline, place] : order)
    place = number++;
  for (Item& item : frame.items) {
    if (auto* text = std::get_if<TextItem>(&item)) {
      text->origin.y = first + pitch * order.at(text->origin.y);
    }
  }
  frame.height = pitch * number;
}

class CoverSetter {
 public:
  CoverSetter(const Cover& cover, TagId parent, const Setting& setting)
      : cover_(cover),
        parent_(parent),
        setting_(setting),
        side_(setting.style.side),
        main_(setting.style.main),
        main_left_(side_ + setting.style.gutter) {
    frame_.width = setting.style.frame_width();
  }

  Frame set(Length height) {
    TagId picture = kArtifact;
    if (cover_.picture) {
      picture = tag(TagType::figure);
      setting_.tags[static_cast<std::size_t>(picture)].alternative =
          cover_.picture->photograph.alternative;
    } else {
      set_marks_tags();
    }
    set_parts();
    if (cover_.compact) {
      frame_.height = put_compact(picture);
      return std::move(frame_);
    }
    const Length foot = height - points(0.75) - parts_.foot_height();
    const Length room = foot - kAboveFoot - parts_.words_height() - kUnderPicture;
    const Length bottom = put_top(picture, picture_height(room));
    const Length words = put_words(bottom > Length{} ? bottom + kUnderPicture : bottom);
    Length foot_top = std::max(foot, words + kAboveFoot);
    // A foot that a very long name leaves no room for stands whole on the page after.
    if (foot_top > foot && foot_top < height) foot_top = height;
    put_foot(foot_top);
    frame_.height = std::max(height, foot_top + parts_.foot_height() + points(0.75));
    return std::move(frame_);
  }

 private:
  /// Picture or marks; returns where they end.
  Length put_top(TagId picture, Length height) {
    if (cover_.picture) return put_picture(picture, height);
    // Marks that a very long name leaves no room for stand in the chapter that dates the reel.
    const bool room = height >= kLeastMarks;
    return cover_.marks_as_read.empty() || !room ? Length{} : put_marks(height);
  }

  /// Returns the foot of the stand-first.
  Length put_compact(TagId picture) {
    const bool beside = cover_.picture || !marks_.empty();
    Length bottom = put_top(picture, kCompactPicture);
    if (!beside) return std::max(put_words({}), put_foot_in_side(foot_under_eyebrow()));
    // Beside the picture stand the words of the foot; long ones push the name down.
    const Length cap = base::scaled(setting_.style.of(Role::side_note).size, 7, 10);
    bottom = std::max(bottom, put_foot_in_side(cap - first_baseline(Role::side_note, setting_)));
    const Length top = bottom + kUnderCompactPicture;
    const Length name = first_baseline(parts_.name_role, setting_);
    return std::max(put_words(top), top + name + eyebrow_.height);
  }

  /// Level with what is first known of the reel, clear of the eyebrow.
  [[nodiscard]] Length foot_under_eyebrow() const {
    const Length name = first_baseline(parts_.name_role, setting_);
    const Length eyebrow = name - first_baseline(Role::eyebrow, setting_) + eyebrow_.height;
    return std::max(parts_.name.height + kUnderName, eyebrow + points(7.5));
  }

  /// A thin record says for whom and by whom in the margin; returns where that ends.
  Length put_foot_in_side(Length y) {
    for (const Frame* words : {&parts_.foot_left, &parts_.foot_right, &note_}) {
      place(*words, {Length{}, y}, frame_.items);
      if (words->height > Length{}) y += words->height + points(7.5);
    }
    return y - points(7.5);
  }

  TagId tag(TagType type) {
    Tag element;
    element.type = type;
    element.parent = parent_;
    return setting_.add_tag(std::move(element));
  }

  Frame words_in(const document::Text& text, Role role, Length width, TagType type) {
    if (text.empty()) return {};
    return set_words(text, role, width, tag(type), setting_);
  }

  void set_marks_tags() {
    note_ =
        words_in(document::plain(cover_.no_picture_note), Role::caption, side_, TagType::paragraph);
    for (const std::string& mark : cover_.marks_as_read) {
      marks_.push_back(
          words_in(document::plain(mark), Role::marks_as_read, main_, TagType::paragraph));
    }
  }

  /// In the order in which they are read.
  void set_parts() {
    eyebrow_ = words_in(document::plain(cover_.eyebrow), Role::eyebrow, side_, TagType::paragraph);
    parts_.name_role = role_of_name(cover_, main_, setting_);
    parts_.name = words_in(document::plain(cover_.name), parts_.name_role, main_, TagType::h1);
    parts_.stand_first =
        words_in(in_lines(cover_.stand_first), Role::stand_first, main_, TagType::paragraph);
    parts_.foot_left =
        words_in(in_lines(cover_.foot_left), Role::side_note, side_, TagType::paragraph);
    parts_.foot_right = words_in(in_lines(cover_.foot_right), Role::side_note,
                                 cover_.compact ? side_ : main_, TagType::paragraph);
  }

  /// Line by line down to the least height; only a name that leaves no other way takes more.
  [[nodiscard]] Length picture_height(Length room) const {
    Length height = kPicture;
    while (height > room && height > kLeastPicture)
      height -= setting_.style.line;
    while (height > room && height > setting_.style.line * 5)
      height -= setting_.style.line;
    return height;
  }

  /// Returns the foot of the picture.
  Length put_picture(TagId figure, Length height) {
    const document::Photograph& photograph = cover_.picture->photograph;
    Length width = cover_.compact ? main_ : frame_.width;
    if (resolution_at(photograph, width) < kPrintResolution) {
      width = main_;
      height = std::min(height, kMainPicture);
    }
    if (resolution_at(photograph, width) < kPoorResolution) width = side_;
    Rect box = fitted(photograph, width, height);
    // A picture narrower than the page stands over the name.
    if (width < frame_.width) box.x = main_left_;
    add_picture(photograph, box, figure, setting_, frame_);
    return box.height;
  }

  Length put_marks(Length height) {
    int lines = 0;
    const Length leading = setting_.style.of(Role::marks_as_read).leading;
    const Length inside = height - points(45);
    std::size_t shown = 0;
    for (const Frame& mark : marks_) {
      const int its = std::max(1, mark.height.thousandths / leading.thousandths);
      if (shown > 0 && kLeastMarkPitch * (lines + its) > inside) break;
      lines += its;
      ++shown;
    }
    const Length pitch = std::min(leading, inside / std::max(1, lines));
    const Length middle = first_baseline(Role::marks_as_read, setting_) - leading / 2;
    Length y = (height - pitch * lines) / 2;
    const Length first = y + pitch / 2 + middle;
    for (std::size_t i = 0; i < shown; ++i) {
      respace(marks_[i], pitch, pitch / 2 + middle);
      place(marks_[i], {main_left_, y}, frame_.items);
      y += marks_[i].height;
    }
    if (!cover_.compact) {
      place(note_, {Length{}, first - first_baseline(Role::caption, setting_)}, frame_.items);
    }
    rule(Length{}, {}, frame_.width);
    rule(Length{}, height - kRule, frame_.width);
    return height;
  }

  /// Returns the foot of the stand-first.
  Length put_words(Length top) {
    const Length baseline = top + first_baseline(parts_.name_role, setting_);
    place(eyebrow_, {Length{}, baseline - first_baseline(Role::eyebrow, setting_)}, frame_.items);
    place(parts_.name, {main_left_, top}, frame_.items);
    const Length under = top + parts_.name.height + kUnderName;
    place(parts_.stand_first, {main_left_, under}, frame_.items);
    // With neither picture nor marks, that is said beside the first line of what is known.
    if (!cover_.compact && !cover_.picture && marks_.empty()) {
      const Length line = first_baseline(Role::stand_first, setting_);
      place(note_, {Length{}, under + line - first_baseline(Role::caption, setting_)},
            frame_.items);
    }
    return top + parts_.words_height();
  }

  void put_foot(Length top) {
    if (parts_.foot_left.items.empty() && parts_.foot_right.items.empty()) return;
    rule(Length{}, top, side_);
    rule(main_left_, top, main_);
    const Length words = top + kRule + kUnderRule - points(0.75);
    place(parts_.foot_left, {Length{}, words}, frame_.items);
    place(parts_.foot_right, {main_left_, words}, frame_.items);
  }

  void rule(Length left, Length top, Length width) {
    frame_.items.emplace_back(filled_box({left, top, width, kRule}, setting_.style.ink, kArtifact));
  }

  const Cover& cover_;
  TagId parent_;
  const Setting& setting_;
  Length side_;
  Length main_;
  Length main_left_;
  Frame frame_;
  Parts parts_;
  Frame eyebrow_;
  Frame note_;
  std::vector<Frame> marks_;
};

}  // namespace

Frame set_cover(const Cover& cover, Length height, TagId parent, const Setting& setting) {
  return CoverSetter(cover, parent, setting).set(height);
}

}  // namespace winchbook::layout
