#include "layout/slice.h"

#include <algorithm>
#include <utility>

namespace winchbook::layout {
namespace {

Length bottom_of(Rect box) {
  return box.y + box.height;
}

struct ExtentOf {
  Rect operator()(const TextItem& item) const {
    const Length above = item.size * 3 / 4;
    return {item.origin.x, item.origin.y - above, {}, above + item.size / 4};
  }
  Rect operator()(const PathItem& item) const {
    if (item.steps.empty()) return {};
    Length left = item.steps.front().to.x;
    Length top = item.steps.front().to.y;
    Length right = left;
    Length foot = top;
    const auto cover = [&](Point point) {
      left = std::min(left, point.x);
      right = std::max(right, point.x);
      top = std::min(top, point.y);
      foot = std::max(foot, point.y);
    };
    for (const PathItem::Step& step : item.steps) {
      if (step.kind == PathItem::Step::Kind::close) continue;
      cover(step.to);
      if (step.kind != PathItem::Step::Kind::curve) continue;
      cover(step.control1);
      cover(step.control2);
    }
    return {left, top, right - left, foot - top};
  }
  Rect operator()(const ImageItem& item) const { return item.box; }
  Rect operator()(const LinkItem& item) const { return item.box; }
};

}  // namespace

Rect extent(const Item& item) {
  return std::visit(ExtentOf{}, item);
}

void Slices::start_block(Length above) {
  starting_ = true;
  above_ = slices.empty() ? above : std::max(above, below);
  // A heading asks for nothing under it, and gets it whatever follows.
  if (!slices.empty() && slices.back().heading) above_ = {};
  below = {};
}

Slice& Slices::add(Slice slice) {
  if (std::exchange(starting_, false)) {
    slice.starts_block = true;
    slice.above = above_;
  }
  slices.push_back(std::move(slice));
  return slices.back();
}

void shrink_picture(Slice& slice, Length by) {
  const auto image =
      std::find_if(slice.frame.items.begin(), slice.frame.items.end(),
                   [](const Item& item) { return std::holds_alternative<ImageItem>(item); });
  if (image == slice.frame.items.end()) return;
  const Rect old = std::get<ImageItem>(*image).box;
  const Rect smaller = {
      old.x, old.y, base::scaled(old.width, (old.height - by).thousandths, old.height.thousandths),
      old.height - by};
  std::get<ImageItem>(*image).box = smaller;
  Frame moved;
  for (Item& item : slice.frame.items) {
    const Rect box = extent(item);
    auto* path = std::get_if<PathItem>(&item);
    if (path != nullptr && box.y < bottom_of(old)) {
      // The rule round the picture follows its edges.
      for (PathItem::Step& step : path->steps) {
        if (step.to.x > old.x + old.width / 2) step.to.x += smaller.width - old.width;
        if (step.to.y > old.y + old.height / 2) step.to.y -= by;
      }
    } else if (box.y >= bottom_of(old)) {
      place({{}, {}, {item}}, {{}, -by}, moved.items);
      continue;
    }
    moved.items.push_back(std::move(item));
  }
  slice.frame.items = std::move(moved.items);
  slice.frame.height -= by;
  slice.shrinkable -= by;
}

std::optional<Frame> cut_off(Frame& frame, Length height) {
  std::vector<Rect> boxes;
  boxes.reserve(frame.items.size());
  for (const Item& item : frame.items)
    boxes.push_back(extent(item));
  // Long strokes beside the words (the bar of a caution) are cut where the words are.
  const auto is_cut = [&](std::size_t i, Length at) {
    return !std::holds_alternative<PathItem>(frame.items[i]) && boxes[i].y < at &&
           bottom_of(boxes[i]) > at;
  };
  Length cut = height;
  for (bool moved = true; moved && cut.thousandths > 0;) {
    moved = false;
    for (std::size_t i = 0; i < boxes.size(); ++i) {
      if (!is_cut(i, cut)) continue;
      cut = boxes[i].y;
      moved = true;
    }
  }
  // Columns whose lines stand between each other's leave no clear line: each ends for itself.
  const bool clear = cut.thousandths > 0;
  const auto is_first = [&](std::size_t i) {
    return clear ? boxes[i].y < cut : bottom_of(boxes[i]) <= height;
  };
  if (!clear) {
    cut = height;
    bool any = false;
    for (std::size_t i = 0; i < boxes.size(); ++i) {
      if (std::holds_alternative<PathItem>(frame.items[i])) continue;
      any = any || is_first(i);
      if (!is_first(i)) cut = std::min(cut, boxes[i].y);
    }
    if (!any) return std::nullopt;
  }
  Frame first{frame.width, clear ? cut : height, {}};
  Frame rest{frame.width, frame.height - cut, {}};
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    Item& item = frame.items[i];
    auto* path = std::get_if<PathItem>(&item);
    if (path != nullptr && boxes[i].y < cut && bottom_of(boxes[i]) > cut) {
      PathItem upper = *path;
      PathItem lower = *path;
      for (PathItem::Step& step : upper.steps)
        step.to.y = std::min(step.to.y, cut);
      for (PathItem::Step& step : lower.steps)
        step.to.y = std::max(step.to.y, cut);
      first.items.emplace_back(std::move(upper));
      place({{}, {}, {std::move(lower)}}, {{}, -cut}, rest.items);
    } else if (is_first(i)) {
      first.items.push_back(std::move(item));
    } else {
      place({{}, {}, {std::move(item)}}, {{}, -cut}, rest.items);
    }
  }
  frame = std::move(rest);
  if (first.items.empty()) return std::nullopt;
  return first;
}

}  // namespace winchbook::layout
