#include "layout/set_beside.h"

#include <algorithm>
#include <string>
#include <utility>

#include "layout/set_figure.h"
#include "layout/shapes.h"

namespace winchbook::layout {
namespace {

using base::points;
using document::Role;

constexpr Length kBar = points(2.25);
constexpr Length kInset = points(8);
constexpr Length kPictureDrop = points(3);  // where the reading text's capitals begin

TagId note_tag(TagId parent, const Setting& setting, bool caution = false) {
  Tag note{.type = TagType::note, .parent = parent, .caution = caution};
  note.id = "note-" + std::to_string(setting.tags.size());
  return setting.add_tag(std::move(note));
}

struct BesideSetter {
  TagId parent;
  const Setting& setting;

  SideItem operator()(const document::SideNote& note) const {
    const Frame words = set_words(note.words, Role::side_note, setting.style.side,
                                  note_tag(parent, setting, note.warns), setting);
    return {words, margin_drop(setting)};
  }
  SideItem operator()(const document::Caution& caution) const {
    return {set_caution(caution, setting.style.side, parent, setting), margin_drop(setting), true};
  }
  SideItem operator()(const document::Figure& figure) const {
    document::Figure small = figure;
    small.width = document::Width::side;
    return {set_figure(small, parent, setting), kPictureDrop};
  }
  SideItem operator()(const document::ChartFigure& chart) const {
    Tag figure{.type = TagType::figure, .parent = parent};
    figure.alternative = chart.alternative;
    return {set_chart(chart.chart, setting.style.side, setting.add_tag(std::move(figure)), setting),
            margin_drop(setting)};
  }
};

}  // namespace

Length margin_drop(const Setting& setting) {
  return std::max(
      Length{}, first_baseline(Role::reading, setting) - first_baseline(Role::side_note, setting));
}

Frame set_caution(const document::Caution& caution, Length width, TagId parent,
                  const Setting& setting) {
  const TagId note = note_tag(parent, setting, true);
  const Length inner = width - kInset;
  const Frame label =
      set_words(document::plain(caution.label), Role::eyebrow, inner,
                setting.add_tag({.type = TagType::paragraph, .parent = note}), setting);
  const Frame words =
      set_words(caution.words, Role::side_note, inner,
                setting.add_tag({.type = TagType::paragraph, .parent = note}), setting);
  Frame frame;
  frame.width = width;
  frame.height = label.height + words.height;
  frame.items.emplace_back(
      filled_box({{}, {}, kBar, frame.height}, setting.style.accent, kArtifact));
  place(label, {kInset, {}}, frame.items);
  place(words, {kInset, label.height}, frame.items);
  return frame;
}

std::vector<SideItem> set_beside(const std::vector<document::Beside>& beside, TagId parent,
                                 const Setting& setting) {
  std::vector<SideItem> items;
  items.reserve(beside.size());
  for (const document::Beside& one : beside)
    items.push_back(std::visit(BesideSetter{parent, setting}, one));
  return items;
}

}  // namespace winchbook::layout
