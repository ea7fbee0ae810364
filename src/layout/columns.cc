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
  ColumnFiller(SliceColumn& column, Length left, Length room, TakenColumns& taken)
      : column_(column), left_(left), room_(room), taken_(taken) {}

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
      place(*head, {left_, {}}, taken_.frame.items);
      y_ = head->height;
    }
    y_ = top_of(slice, y_);
    place(slice.frame, {left_, y_}, taken_.frame.items);
    if (slice.bookmark || !slice.anchors.empty())
      taken_.places.push_back({y_, slice.anchors, slice.bookmark});
    y_ += slice.frame.height;
  }

  SliceColumn& column_;
  Length left_;
  Length room_;
  TakenColumns& taken_;
  Length y_;
};

/// How high the slices from `first` up to `end` stand in a column of their own.
Length height_between(const Slices& set, std::size_t first, std::size_t end) {
  Length y;
  if (first < end && set.slices[first].head >= 0)
    y = set.heads[static_cast<std::size_t>(set.slices[first].head)].height;
  for (std::size_t i = first; i < end; ++i)
    y = top_of(set.slices[i], y) + set.slices[i].frame.height;
  return y;
}

/// The least height in which what is left of a column flows into two.
Length balanced(const SliceColumn& column) {
  const std::size_t count = column.set.slices.size();
  Length least = height_between(column.set, column.next, count);
  for (std::size_t end = column.next; end < count; end = group_end(column, end)) {
    const Length left = height_between(column.set, column.next, end);
    const Length right = height_between(column.set, end, count);
    least = std::min(least, std::max(left, right));
    if (left > right) break;
  }
  return least;
}

/// Fills a column, and the second one that it flows into, alike where all of it fits.
Length fill(SliceColumn& column, Length room, bool must, TakenColumns& taken) {
  const Length height = column.goes_on_at ? std::min(room, balanced(column)) : room;
  ColumnFiller first(column, column.left, height, taken);
  first.fill();
  if (must) first.force();
  if (!column.goes_on_at) return first.foot();
  ColumnFiller second(column, *column.goes_on_at, std::max(room, first.foot()), taken);
  if (first.foot().thousandths > 0) second.fill();
  return std::max(first.foot(), second.foot());
}

}  // namespace

Length height_of(const std::vector<SliceColumn>& columns) {
  Length highest;
  for (const SliceColumn& column : columns) {
    const Length whole = height_between(column.set, 0, column.set.slices.size());
    highest = std::max(highest, column.goes_on_at ? balanced(column) : whole);
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
    taken.frame.height = std::max(taken.frame.height, fill(column, room, must, taken));
  }
  if (taken.frame.height.thousandths == 0 && !all_taken(columns)) return std::nullopt;
  return taken;
}

}  // namespace winchbook::layout
