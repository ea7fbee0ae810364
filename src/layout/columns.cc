#include "layout/columns.h"

#include <algorithm>
#include <utility>

namespace winchbook::layout {
namespace {

using base::points;

/// Table rows are three of these high and further lines two, so that both columns' lines meet.
constexpr Length kStep = points(5);

Length up_to_step(Length y) {
  return kStep * ((y.thousandths + kStep.thousandths - 1) / kStep.thousandths);
}

/// Where a slice stands under what is at `y`; at the top no space is left over it.
Length top_of(const Slice& slice, Length y) {
  if (y.thousandths == 0 || !slice.starts_block) return y;
  return up_to_step(y + slice.above);
}

/// The end of the slices from `first` on that no page boundary parts.
std::size_t group_end(const SliceColumn& column, std::size_t first) {
  std::size_t end = first;
  while (end + 1 < column.set.slices.size() && column.set.slices[end].keep_with_next)
    ++end;
  return end + 1;
}

/// Fills one column of a page.
class ColumnFiller {
 public:
  ColumnFiller(SliceColumn& column, Length room, TakenColumns& taken)
      : column_(column), room_(room), taken_(taken) {}

  void fill() {
    while (column_.next < column_.set.slices.size()) {
      const std::size_t end = group_end(column_, column_.next);
      if (foot_of(end) > room_) break;
      for (; column_.next < end; ++column_.next)
        put(column_.set.slices[column_.next]);
    }
  }

  /// At least something of what comes next, where nothing was put yet.
  void force() {
    if (y_.thousandths > 0 || column_.next == column_.set.slices.size()) return;
    const std::size_t end = group_end(column_, column_.next);
    while (column_.next < end && foot_of(column_.next + 1) <= room_)
      put(column_.set.slices[column_.next++]);
    if (y_.thousandths > 0) return;
    Slice& tall = column_.set.slices[column_.next];
    Slice whole = tall;
    if (std::optional<Frame> part = cut_off(tall.frame, room_)) {
      whole.frame = std::move(*part);
      tall.bookmark.reset();
      tall.anchors.clear();
      put(whole);
      return;
    }
    tall = whole;
    put(tall);
    ++column_.next;
  }

  [[nodiscard]] Length foot() const { return y_; }

 private:
  [[nodiscard]] const Frame* head_of(const Slice& slice) const {
    if (y_.thousandths > 0 || slice.head < 0) return nullptr;
    return &column_.set.heads[static_cast<std::size_t>(slice.head)];
  }

  [[nodiscard]] Length foot_of(std::size_t end) const {
    const Frame* head = head_of(column_.set.slices[column_.next]);
    Length y = y_;
    if (head != nullptr) y += head->height;
    for (std::size_t i = column_.next; i < end; ++i)
      y = top_of(column_.set.slices[i], y) + column_.set.slices[i].frame.height;
    return y;
  }

  void put(const Slice& slice) {
    if (const Frame* head = head_of(slice)) {
      place(*head, {column_.left, {}}, taken_.frame.items);
      y_ = head->height;
    }
    y_ = top_of(slice, y_);
    place(slice.frame, {column_.left, y_}, taken_.frame.items);
    if (slice.bookmark || !slice.anchors.empty())
      taken_.places.push_back({y_, slice.anchors, slice.bookmark});
    y_ += slice.frame.height;
  }

  SliceColumn& column_;
  Length room_;
  TakenColumns& taken_;
  Length y_;
};

}  // namespace

Length height_of(const std::vector<SliceColumn>& columns) {
  Length highest;
  for (const SliceColumn& column : columns) {
    Length y;
    for (const Slice& slice : column.set.slices)
      y = top_of(slice, y) + slice.frame.height;
    highest = std::max(highest, y);
  }
  return highest;
}

bool all_taken(const std::vector<SliceColumn>& columns) {
  return std::all_of(columns.begin(), columns.end(), [](const SliceColumn& column) {
    return column.next == column.set.slices.size();
  });
}

std::optional<TakenColumns> take_columns(std::vector<SliceColumn>& columns, Length room,
                                         bool must) {
  TakenColumns taken;
  for (SliceColumn& column : columns) {
    ColumnFiller filler(column, room, taken);
    filler.fill();
    if (must) filler.force();
    taken.frame.height = std::max(taken.frame.height, filler.foot());
  }
  if (taken.frame.height.thousandths == 0 && !all_taken(columns)) return std::nullopt;
  return taken;
}

}  // namespace winchbook::layout
