#include "layout/set_chapter.h"

#include <algorithm>
#include <array>
#include <utility>

#include "layout/columns.h"
#include "layout/set_beside.h"
#include "layout/set_entry.h"
#include "layout/set_figure.h"
#include "layout/set_labels.h"
#include "layout/set_list.h"
#include "layout/set_opening.h"
#include "layout/set_paragraph.h"
#include "layout/set_ruled_lines.h"
#include "layout/set_seal.h"
#include "layout/set_signatures.h"
#include "layout/set_step.h"
#include "layout/set_table.h"
#include "layout/set_tally.h"

namespace winchbook::layout {
namespace {

using base::points;
using document::Block;
using document::Width;

constexpr Length kBetweenHalves = points(15);
constexpr Length kBetweenNotes = points(5);
constexpr Length kOpening = points(120);  // with a stand-first of two lines, and a line of air

Length height_of(const document::Chart& chart, Length width, const Setting& setting) {
  std::vector<Tag> tried;
  const Setting trial{setting.style, setting.fonts, setting.language, tried};
  return set_chart(chart, width, kArtifact, trial).height;
}

/// A chart of more marks than a page holds under a chapter's opening becomes several, each with an
/// axis of its own; what stands under the axis comes with the last.
std::vector<document::Chart> in_pages(const document::Chart& chart, Length width,
                                      const Setting& setting) {
  const auto* dating = std::get_if<document::DatingChart>(&chart);
  if (dating == nullptr) return {chart};
  const document::Paper& paper = setting.style.paper;
  const Length room = paper.height - paper.top - paper.foot - kOpening;
  std::vector<document::Chart> parts;
  document::DatingChart rest = *dating;
  while (rest.marks.size() > 1 && height_of(rest, width, setting) > room) {
    document::DatingChart part;
    part.marks = std::exchange(rest.marks, {});
    part.window = rest.window;
    do {
      rest.marks.insert(rest.marks.begin(), std::move(part.marks.back()));
      part.marks.pop_back();
    } while (part.marks.size() > 1 && height_of(part, width, setting) > room);
    parts.emplace_back(std::move(part));
  }
  parts.emplace_back(std::move(rest));
  return parts;
}

/// Sets one block after another under a section, knowing what stood before.
class BlockSetter {
 public:
  BlockSetter(TagId section, TagType subhead_level, const Setting& setting, Slices& slices)
      : section_(section), subhead_level_(subhead_level), setting_(setting), slices_(slices) {}

  void set(const Block& block) {
    const bool entry = std::holds_alternative<document::Entry>(block);
    if (!entry) close_entries();
    if (!std::holds_alternative<document::Step>(block)) close_steps();
    std::visit(*this, block);
    const auto* paragraph = std::get_if<document::Paragraph>(&block);
    after_text_ =
        paragraph != nullptr && (paragraph->manner == document::ParagraphManner::reading ||
                                 paragraph->manner == document::ParagraphManner::opening ||
                                 paragraph->manner == document::ParagraphManner::unindented);
    after_entry_ = entry;
  }

  /// The rule under the last entry of a run.
  void close_entries() {
    if (!std::exchange(after_entry_, false)) return;
    slices_.slices.back().frame.items.emplace_back(dashed_rule(
        {{}, slices_.slices.back().frame.height}, setting_.style.frame_width(), setting_));
    slices_.below = setting_.style.line;
  }

  /// The rule under the last step of a run.
  void close_steps() {
    if (std::exchange(steps_, kArtifact) == kArtifact) return;
    Frame& last = slices_.slices.back().frame;
    PathItem rule = step_rule(setting_);
    for (PathItem::Step& step : rule.steps)
      step.to.y += last.height;
    last.items.emplace_back(std::move(rule));
    slices_.below = setting_.style.line;
  }

  void operator()(const document::Step& block) {
    if (steps_ == kArtifact) {
      slices_.start_block(setting_.style.line);
      steps_ = setting_.add_tag({.type = TagType::list, .parent = section_, .numbered = true});
    }
    add_step(block, steps_, setting_, slices_);
  }
  void operator()(const document::Fold& /*block*/) {
    Slice slice;
    slice.full = true;
    slice.fold = Slice::Fold::here;
    slices_.add(std::move(slice));
  }
  void operator()(const document::Paragraph& block) {
    add_paragraph(block, after_text_, section_, setting_, slices_);
  }
  void operator()(const document::Subhead& block) {
    add_subhead(block, subhead_level_, section_, setting_, slices_);
  }
  void operator()(const document::Figure& block) { add_figure(block, section_, setting_, slices_); }
  void operator()(const document::FigureRow& block) {
    if (!block.figures.empty()) add_figure_row(block, section_, setting_, slices_);
  }
  void operator()(const document::Pair& block) { add_pair(block, section_, setting_, slices_); }
  void operator()(const document::Table& block) { add_table(block, section_, setting_, slices_); }
  void operator()(const document::List& block) { add_list(block, section_, setting_, slices_); }
  void operator()(const document::Facts& block) { add_facts(block, section_, setting_, slices_); }
  void operator()(const document::Notes& block) { add_notes(block, section_, setting_, slices_); }
  void operator()(const document::Tally& block) { add_tally(block, section_, setting_, slices_); }

  void operator()(const document::ChartFigure& block) {
    const document::Style& style = setting_.style;
    Tag figure{.type = TagType::figure, .parent = section_};
    figure.alternative = block.alternative;
    TagId tag = setting_.add_tag(std::move(figure));
    const bool full = block.width == Width::full;
    const Length width = full ? style.frame_width() : style.main;
    for (const document::Chart& part : in_pages(block.chart, width, setting_)) {
      Slice slice;
      slice.full = full;
      // The words of the first part tell them all.
      const Frame chart = set_chart(part, width, std::exchange(tag, kArtifact), setting_);
      place(chart, {full ? Length{} : style.side + style.gutter, {}}, slice.frame.items);
      slice.frame.width = style.frame_width();
      slice.frame.height = chart.height;
      slices_.start_block(style.line);
      slices_.add(std::move(slice));
      slices_.below = style.line;
    }
  }

  void operator()(const document::Entry& block) {
    Slice slice;
    slice.full = true;
    slice.frame = set_entry(block, section_, setting_);
    if (!block.anchor.empty()) slice.anchors.push_back(block.anchor);
    if (!after_entry_) slices_.start_block(setting_.style.line);
    slices_.add(std::move(slice));
  }

  void operator()(const document::RuledLines& block) {
    slices_.start_block(setting_.style.line);
    for (Frame& frame : set_ruled_lines(block, section_, setting_)) {
      Slice slice;
      slice.full = true;
      slice.frame = std::move(frame);
      slices_.add(std::move(slice));
    }
    slices_.below = setting_.style.line;
  }

  void operator()(const document::Halves& block) {
    document::Style half = setting_.style;
    half.main = (setting_.style.frame_width() - kBetweenHalves) / 2;
    half.side = half.gutter = {};
    Slice slice;
    slice.full = true;
    const Length second = half.main + kBetweenHalves;
    slice.columns.push_back({{}, column_of(block.left, half)});
    if (block.right.empty()) {
      slice.columns.front().goes_on_at = second;
    } else {
      slice.columns.push_back({second, column_of(block.right, half)});
    }
    slice.frame.width = setting_.style.frame_width();
    slice.frame.height = height_of(slice.columns);
    if (block.above_fold) slice.fold = Slice::Fold::above;
    slices_.start_block(setting_.style.line);
    slices_.add(std::move(slice));
    slices_.below = setting_.style.line;
  }

  void operator()(const document::Signatures& block) {
    // Nobody signs a page on which nothing else stands.
    if (!slices_.slices.empty()) slices_.slices.back().keep_with_next = true;
    Slice slice;
    slice.full = true;
    slice.at_foot = true;
    slice.frame = set_signatures(block, section_, setting_);
    // It stands by the foot, not on the grid.
    slices_.add(std::move(slice));
  }

  void operator()(const document::Labels& block) {
    slices_.start_block({});
    for (Frame& row : set_labels(block, section_, setting_)) {
      Slice slice;
      slice.full = true;
      slice.frame = std::move(row);
      slices_.add(std::move(slice));
    }
  }

  void operator()(const document::Seal& block) {
    const document::Style& style = setting_.style;
    Slice slice;
    const Frame code = set_seal_code(block, section_, setting_);
    place(code, {style.side + style.gutter, {}}, slice.frame.items);
    slice.frame.width = style.frame_width();
    slice.frame.height = code.height;
    slice.beside.push_back({set_qr_code(block, section_, setting_), points(7.5)});
    slices_.start_block({});
    slices_.add(std::move(slice));
  }

 private:
  /// One column in a style of which it fills the whole frame.
  [[nodiscard]] Slices column_of(const std::vector<document::HalfBlock>& blocks,
                                 const document::Style& half) const {
    Slices column;
    const Setting here{half, setting_.fonts, setting_.language, setting_.tags, setting_.chapter};
    BlockSetter setter(section_, subhead_level_, here, column);
    for (const document::HalfBlock& block : blocks)
      std::visit([&](const auto& one) { setter.set_in_half(one); }, block);
    keep_with_headings(column, half.line);
    return column;
  }

  void set_in_half(const document::Caution& block) {
    Slice slice;
    slice.full = true;
    slice.frame = set_caution(block, setting_.style.frame_width(), section_, setting_);
    slices_.start_block(kBetweenNotes);
    slices_.add(std::move(slice));
    slices_.below = kBetweenNotes;
  }

  template <class One> void set_in_half(const One& block) {
    One alone = block;
    if constexpr (requires { alone.beside; }) alone.beside.clear();
    if constexpr (requires { alone.width; }) alone.width = Width::full;
    set(Block(alone));
    if constexpr (std::is_same_v<One, document::Paragraph>)
      slices_.below = std::max(slices_.below, kBetweenNotes);
    if constexpr (requires { block.beside; }) {
      for (const document::Beside& one : block.beside)
        std::visit([&](const auto& under) { set_under(under); }, one);
    }
  }

  /// A half has no margin: what would stand there follows under its block.
  void set_under(const document::SideNote& note) {
    set_in_half(document::Paragraph{note.words, document::ParagraphManner::note});
  }
  void set_under(const document::Caution& caution) { set_in_half(caution); }
  void set_under(const document::ChartFigure& chart) { set_in_half(chart); }
  void set_under(const document::Figure& figure) { set(Block(figure)); }

  TagId section_;
  TagType subhead_level_;
  const Setting& setting_;
  Slices& slices_;
  bool after_text_ = false;
  bool after_entry_ = false;
  TagId steps_ = kArtifact;  ///< the list of the run of steps that goes on
};

}  // namespace

SetChapter set_chapter(const document::Chapter& chapter, TagType title_level, TagId parent,
                       const Setting& setting) {
  const TagId section =
      setting.add_tag({.type = TagType::section, .parent = parent, .title = chapter.title});
  const Setting here{setting.style, setting.fonts, setting.language, setting.tags, chapter.id};
  SetChapter set;
  set.furniture = chapter_furniture(chapter, here);
  set.furniture.starts_page = chapter.starts_page || chapter.counted_apart;
  set.slices.add(set_opening(chapter, title_level, section, here));
  const TagType below = title_level == TagType::h1 ? TagType::h2 : TagType::h3;
  BlockSetter setter(section, below, here, set.slices);
  for (const Block& block : chapter.blocks)
    setter.set(block);
  setter.close_entries();
  setter.close_steps();
  keep_with_headings(set.slices, setting.style.line);
  return set;
}

}  // namespace winchbook::layout
