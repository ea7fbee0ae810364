#include "layout/set_labels.h"

#include <algorithm>
#include <utility>

#include "layout/set_seal.h"
#include "layout/shapes.h"

namespace winchbook::layout {
namespace {

using base::points;
using document::Label;
using document::Role;

constexpr std::size_t kAcross = 2;
constexpr Length kInset = points(12);
constexpr Length kOver = points(9);  // above and below
constexpr Length kMark = points(7.5);
constexpr Length kThin = points(0.35);
constexpr Length kHole = points(4.5);  // the radius of a punched hole
constexpr Length kHoleRoom = points(21);
constexpr Length kWritePitch = points(18);
constexpr Length kWriteRule = points(0.5);
constexpr Length kModule = points(3);
constexpr Length kQuiet = points(12);  // white round a code: four modules (ISO/IEC 18004)
constexpr Length kBetween = points(3.75);

/// One label while it is filled from the top.
class LabelSetter {
 public:
  LabelSetter(const Label& label, Length width, TagId list, const Setting& setting)
      : label_(label), setting_(setting), width_(width) {
    const TagId item = setting.add_tag({.type = TagType::list_item, .parent = list});
    body_ = setting.add_tag({.type = TagType::list_body, .parent = item});
    left_ = kInset + (label.hole ? kHoleRoom : Length{});
    inner_ = width - left_ - kInset;
  }

  Frame set() {
    const Frame code = square_code();
    const bool coded = !code.items.empty();
    // Words keep clear of the code beside them; under a number they have the whole width.
    const Length beside = coded ? inner_ - code.width - kQuiet : inner_;
    if (!label_.number.empty()) add_number(beside);
    const Length foot_of_code = coded ? kQuiet + code.height : Length{};
    if (!label_.number.empty()) y_ = std::max(y_, foot_of_code) + kBetween;
    const Length measure = label_.number.empty() ? beside : inner_;
    add_name(measure);
    for (const document::Text& words : label_.words)
      add(words, label_.number.empty() ? Role::table : Role::small_reading, measure);
    for (int i = 0; i < label_.ruled_lines; ++i) {
      y_ += kWritePitch;
      frame_.items.emplace_back(filled_box({left_, y_ - kWriteRule, measure, kWriteRule},
                                           setting_.style.ink2, kArtifact));
    }
    if (coded) place(code, {left_ + inner_ - code.width, kQuiet}, frame_.items);
    foot_ = set_words(document::plain(label_.foot), Role::label, measure, paragraph(), setting_);
    frame_.width = width_;
    frame_.height =
        std::max(y_ + kBetween + foot_.height + kOver, coded ? foot_of_code + kQuiet : Length{});
    return std::move(frame_);
  }

  /// What stands at the foot, when it is known how high the row is.
  void finish(Frame& frame, Length height) const {
    place(foot_, {left_, height - kOver - foot_.height}, frame.items);
    if (label_.hole) {
      frame.items.emplace_back(ring({kInset + kHole, height / 2}, kHole,
                                    {kThin, setting_.style.ink}, std::nullopt, kArtifact));
    }
    frame.height = height;
  }

 private:
  [[nodiscard]] TagId paragraph() const {
    return setting_.add_tag({.type = TagType::paragraph, .parent = body_});
  }

  [[nodiscard]] Frame square_code() const {
    if (label_.qr_payload.empty()) return {};
    return set_square_code(label_.qr_payload, label_.qr_alternative, kModule, body_, setting_);
  }

  void add(const document::Text& words, Role role, Length measure) {
    const Frame set = set_words(words, role, measure, paragraph(), setting_);
    place(set, {left_, y_}, frame_.items);
    y_ += set.height;
  }

  /// As large as the room beside the code lets it be.
  void add_number(Length room) {
    Role role = Role::card_number;
    for (const Role smaller : {Role::cover_name, Role::cover_name_3}) {
      if (setting_.width(role, label_.number) <= room) break;
      role = smaller;
    }
    const Frame set = set_words(document::plain(label_.number), role, room, paragraph(), setting_);
    place(set, {left_, y_}, frame_.items);
    y_ += set.height;
  }

  void add_name(Length measure) {
    if (label_.name.empty()) return;
    const Role role = setting_.width(Role::chapter_title_2, label_.name) <= measure
                          ? Role::chapter_title_2
                          : Role::chapter_title_3;
    add(document::plain(label_.name), role, measure);
    y_ += kBetween;
  }

  const Label& label_;
  const Setting& setting_;
  Length width_;
  Length left_;
  Length inner_;
  Length y_ = kOver;
  TagId body_ = kArtifact;
  Frame frame_;
  Frame foot_;
};

/// A bracket in each corner, inside the label.
void add_cut_marks(Rect box, const Setting& setting, Frame& frame) {
  const Length right = box.x + box.width;
  const Length foot = box.y + box.height;
  const document::Colour ink = setting.style.ink;
  for (const Length x : {box.x, right - kMark}) {
    for (const Length y : {box.y, foot - kThin})
      frame.items.emplace_back(filled_box({x, y, kMark, kThin}, ink, kArtifact));
  }
  for (const Length x : {box.x, right - kThin}) {
    for (const Length y : {box.y, foot - kMark})
      frame.items.emplace_back(filled_box({x, y, kThin, kMark}, ink, kArtifact));
  }
}

}  // namespace

std::vector<Frame> set_labels(const document::Labels& labels, TagId parent,
                              const Setting& setting) {
  const Length width = setting.style.frame_width() / static_cast<int>(kAcross);
  const TagId list = setting.add_tag({.type = TagType::list, .parent = parent});
  std::vector<Frame> rows;
  for (std::size_t first = 0; first < labels.labels.size(); first += kAcross) {
    const std::size_t end = std::min(first + kAcross, labels.labels.size());
    std::vector<LabelSetter> setters;
    std::vector<Frame> cells;
    Length height = points(labels.least_height);
    for (std::size_t i = first; i < end; ++i) {
      setters.emplace_back(labels.labels[i], width, list, setting);
      cells.push_back(setters.back().set());
      height = std::max(height, cells.back().height);
    }
    Frame row;
    row.width = setting.style.frame_width();
    row.height = height;
    Length left;
    for (std::size_t i = 0; i < cells.size(); ++i) {
      setters[i].finish(cells[i], height);
      place(cells[i], {left, {}}, row.items);
      add_cut_marks({left, {}, width, height}, setting, row);
      left += width;
    }
    rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace winchbook::layout
