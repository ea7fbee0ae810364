#include "layout/set_table.h"

#include <algorithm>
#include <utility>

#include "layout/set_beside.h"
#include "layout/set_paragraph.h"
#include "layout/shapes.h"
#include "layout/table_columns.h"

namespace winchbook::layout {
namespace {

using base::points;
using document::Cell;
using document::Column;
using document::Role;
using document::Row;
using document::Table;
using document::Width;

constexpr Length kGap = points(6);
constexpr Length kRowHeight = points(15);  // of one line
constexpr Length kHeadRule = points(0.75);
constexpr Length kRowRule = points(0.35);
constexpr Length kDashedRowRule = points(0.4);
constexpr Length kOverKey = points(3.75);

/// One cell, set once; where it stands is known when its row's height is.
struct SetCell {
  std::size_t first = 0;  ///< its first column
  std::size_t count = 1;
  InlineText words;
};

struct SetRow {
  std::vector<SetCell> cells;
  bool names_group = false;
};

class TableSetter {
 public:
  TableSetter(const Table& table, TagId parent, const Setting& setting, Slices& slices)
      : table_(table),
        parent_(parent),
        setting_(setting),
        slices_(slices),
        full_(table.width == Width::full),
        left_(full_ ? Length{} : setting.style.side + setting.style.gutter),
        width_(full_ ? setting.style.frame_width() : setting.style.main) {}

  void set() {
    slices_.start_block(setting_.style.line);
    const std::size_t first = slices_.slices.size();
    Tag element{.type = TagType::table, .parent = parent_};
    element.alternative = table_.summary;
    table_tag_ = setting_.add_tag(std::move(element));
    add_title();
    read_rows();
    size_columns();
    add_head();
    add_rows();
    add_key();
    if (first == slices_.slices.size()) return;
    // Beside a table as wide as the frame nothing can stand: it follows under it.
    Slice& host = full_ ? slices_.slices.back() : slices_.slices[first];
    host.beside = set_beside(table_.beside, parent_, setting_);
    slices_.below = setting_.style.line;
  }

 private:
  void add_title() {
    if (table_.title.empty()) return;
    const TagId tag = setting_.add_tag({.type = TagType::caption, .parent = table_tag_});
    const std::vector<SetLine> lines =
        set_lines(inline_text(document::plain(table_.title), Role::subhead, tag, setting_),
                  {width_}, setting_);
    const std::size_t at = add_lines(lines, Role::subhead, left_, setting_, slices_);
    for (std::size_t i = at; i < slices_.slices.size(); ++i) {
      slices_.slices[i].keep_with_next = true;
      slices_.slices[i].full = full_;
    }
  }

  void read_rows() {
    if (!table_.head.empty()) {
      const TagId head = setting_.add_tag({.type = TagType::table_head, .parent = table_tag_});
      for (const Row& row : table_.head)
        head_.push_back(read_row(row, head, true));
    }
    const TagId body = setting_.add_tag({.type = TagType::table_body, .parent = table_tag_});
    for (const Row& row : table_.rows)
      rows_.push_back(read_row(row, body, false));
  }

  /// Shapes a row's cells; a row that is short of cells gets empty ones, so that the table stays
  /// regular.
  SetRow read_row(const Row& row, TagId section, bool head) {
    const TagId tag = setting_.add_tag({.type = TagType::row, .parent = section});
    const std::size_t columns = table_.columns.size();
    SetRow set{{}, row.names_group};
    std::size_t at = 0;
    for (const Cell& cell : row.cells) {
      if (at >= columns) break;
      SetCell one;
      one.first = at;
      one.count = std::min(static_cast<std::size_t>(std::max(1, cell.columns)), columns - at);
      Tag element{.type = TagType::cell, .parent = tag};
      if (head && !cell.words.empty()) element.type = TagType::header_cell;
      if (!head && (table_.columns[at].row_name || row.names_group)) {
        element.type = TagType::header_cell;
        element.row_scope = true;
      }
      element.column_span = static_cast<int>(one.count);
      element.language = cell.words.language;
      const TagId cell_tag = setting_.add_tag(std::move(element));
      one.words = inline_text(cell.words, head ? Role::label : Role::table, cell_tag, setting_);
      at += one.count;
      set.cells.push_back(std::move(one));
    }
    for (; at < columns; ++at)
      (void)setting_.add_tag({.type = TagType::cell, .parent = tag});
    return set;
  }

  void size_columns() {
    std::vector<ColumnNeed> needs(table_.columns.size());
    for (std::size_t i = 0; i < needs.size(); ++i)
      needs[i].fixed = points(table_.columns[i].width);
    for (const bool spanning : {false, true}) {
      for (const std::vector<SetRow>* rows : {&head_, &rows_}) {
        for (const SetRow& row : *rows)
          ask(row, spanning, needs);
      }
    }
    widths_ = column_widths(std::move(needs), width_, kGap);
  }

  void ask(const SetRow& row, bool spanning, std::vector<ColumnNeed>& needs) const {
    for (const SetCell& cell : row.cells) {
      if ((cell.count > 1) != spanning) continue;
      ContentWidths widths = content_widths(cell.words, setting_);
      for (std::size_t i = cell.first; i + 1 < cell.first + cell.count; ++i) {
        const Length before = std::max(needs[i].fixed, needs[i].least) + kGap;
        widths.least -= before;
        widths.most -= std::max({needs[i].fixed, needs[i].most}) + kGap;
      }
      ColumnNeed& need = needs[cell.first + cell.count - 1];
      need.least = std::max(need.least, widths.least);
      need.most = std::max(need.most, widths.most);
    }
  }

  [[nodiscard]] Length left_of(std::size_t column) const {
    Length left = left_;
    for (std::size_t i = 0; i < column; ++i)
      left += widths_[i];
    return left;
  }

  /// The room for a cell's words: the gap at its right belongs to nobody.
  [[nodiscard]] Length room_of(const SetCell& cell) const {
    const std::size_t end = cell.first + cell.count;
    const Length right = end == widths_.size() ? left_ + width_of_all() : left_of(end) - kGap;
    return std::max(right - left_of(cell.first), points(1));
  }

  [[nodiscard]] Length width_of_all() const { return left_of(widths_.size()) - left_; }

  Frame set_row(const SetRow& row, Role role, bool at_foot) const {
    const Length leading = setting_.style.of(role).leading;
    const Length above = (kRowHeight - leading) / 2;
    std::vector<std::vector<SetLine>> set;
    std::size_t most = 1;
    for (const SetCell& cell : row.cells) {
      set.push_back(set_lines(cell.words, {room_of(cell)}, setting_));
      most = std::max(most, set.back().size());
    }
    Frame frame;
    frame.width = setting_.style.frame_width();
    frame.height = kRowHeight + leading * static_cast<int>(most - 1);
    if (role == Role::table && !row.names_group)
      frame.height = std::max(frame.height, points(table_.least_row));
    for (std::size_t i = 0; i < set.size(); ++i) {
      const SetCell& cell = row.cells[i];
      const int sunk = at_foot ? static_cast<int>(most - set[i].size()) : 0;
      Length baseline = above + first_baseline(role, setting_) + leading * sunk;
      const bool numbers =
          !row.names_group && table_.columns[cell.first].align == Column::Align::numbers;
      for (const SetLine& line : set[i]) {
        const Length shift = numbers ? room_of(cell) - line.width : Length{};
        place({{}, {}, line.items}, {left_of(cell.first) + shift, baseline}, frame.items);
        baseline += leading;
      }
    }
    return frame;
  }

  [[nodiscard]] PathItem rule(Length y, Length thickness) const {
    Stroke stroke{thickness, thickness == kHeadRule ? setting_.style.ink : setting_.style.ink2};
    if (table_.dashed) stroke.dashes = {points(3), points(2)};
    return drawn_line({left_, y}, {left_ + width_of_all(), y}, stroke, kArtifact);
  }

  void add_head() {
    if (head_.empty()) return;
    Frame head;
    head.width = setting_.style.frame_width();
    for (const SetRow& row : head_) {
      const Frame one = set_row(row, Role::label, true);
      place(one, {{}, head.height}, head.items);
      head.height += one.height;
    }
    head.items.emplace_back(rule(head.height, kHeadRule));
    // A head that takes more of a page than its rows would is said once.
    const document::Paper& paper = setting_.style.paper;
    if (head.height <= (paper.height - paper.top - paper.foot) / 3) {
      head_index_ = static_cast<int>(slices_.heads.size());
      slices_.heads.push_back(as_furniture(head));
    }
    Slice slice;
    slice.full = full_;
    slice.keep_with_next = true;
    slice.frame = std::move(head);
    slices_.add(std::move(slice));
  }

  static Frame as_furniture(const Frame& head) {
    Frame copy{head.width, head.height, {}};
    for (const Item& item : head.items) {
      if (std::holds_alternative<LinkItem>(item)) continue;
      copy.items.push_back(item);
      std::visit([](auto& one) { one.tag = kArtifact; }, copy.items.back());
    }
    return copy;
  }

  void add_rows() {
    const std::size_t count = rows_.size();
    for (std::size_t i = 0; i < count; ++i) {
      const bool last = i + 1 == count;
      Slice slice;
      slice.full = full_;
      slice.head = head_index_;
      slice.frame = set_row(rows_[i], Role::table, false);
      const Length thickness = last ? kHeadRule : table_.dashed ? kDashedRowRule : kRowRule;
      slice.frame.items.emplace_back(rule(slice.frame.height, thickness));
      // Two rows at least at either end of a page.
      slice.keep_with_next =
          (i == 0 && count > 1) || i + 2 == count || (table_.rows[i].names_group && !last);
      if (last && !table_.below.empty()) slice.keep_with_next = true;
      if (!table_.rows[i].anchor.empty()) slice.anchors.push_back(table_.rows[i].anchor);
      slices_.add(std::move(slice));
    }
  }

  void add_key() {
    if (table_.below.empty()) return;
    const TagId tag = setting_.add_tag({.type = TagType::paragraph, .parent = parent_});
    const Frame words = set_words(table_.below, Role::caption, width_, tag, setting_);
    Slice slice;
    slice.full = full_;
    slice.frame.width = setting_.style.frame_width();
    place(words, {left_, kOverKey}, slice.frame.items);
    slice.frame.height = words.height + kOverKey;
    slices_.add(std::move(slice));
  }

  const Table& table_;
  TagId parent_;
  const Setting& setting_;
  Slices& slices_;
  bool full_;
  Length left_;
  Length width_;
  TagId table_tag_ = kArtifact;
  std::vector<SetRow> head_;
  std::vector<SetRow> rows_;
  std::vector<Length> widths_;
  int head_index_ = -1;
};

}  // namespace

void add_table(const Table& table, TagId parent, const Setting& setting, Slices& slices) {
  if (table.columns.empty()) return;
  TableSetter(table, parent, setting, slices).set();
}

}  // namespace winchbook::layout
