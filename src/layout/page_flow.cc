#include "layout/page_flow.h"

#include <algorithm>
#include <utility>

#include "layout/columns.h"
#include "layout/shapes.h"

namespace winchbook::layout {
namespace {

using base::points;

constexpr int kLeastLines = 6;  // that columns begin with at the foot of a page
constexpr Length kBetweenNotes = points(7.5);
constexpr Length kFromFold = points(15);
constexpr Length kEdge = points(14);        // what a printer leaves blank
constexpr Length kMark = points(24);        // of a fold, in the paper's margin
constexpr Length kUnderMargin = points(3);  // what reaches into the margin keeps clear of it

Length up_to_grid(Length y, Length line) {
  const int lines = (y.thousandths + line.thousandths - 1) / line.thousandths;
  return line * lines;
}

}  // namespace

void keep_with_headings(Slices& chapter, Length line) {
  std::vector<Slice>& slices = chapter.slices;
  for (std::size_t i = 0; i < slices.size(); ++i) {
    if (!slices[i].heading) continue;
    const Length wanted = line * 3;
    Length kept;
    for (std::size_t j = i; j + 1 < slices.size() && kept < wanted; ++j) {
      // What stands under it may be shorter than three lines.
      if (slices[j + 1].heading && kept.thousandths > 0) break;
      slices[j].keep_with_next = true;
      kept += slices[j + 1].heading ? Length{} : slices[j + 1].frame.height;
    }
  }
}

Length PageFlow::frame_height() const {
  const document::Paper& paper = setting_.style.paper;
  return paper.height - paper.top - paper.foot;
}

Point PageFlow::frame_corner() const {
  return {setting_.style.paper.left, setting_.style.paper.top};
}

void PageFlow::draw(const Frame& frame, Point at) {
  const Point corner = frame_corner();
  place(frame, {corner.x + at.x, corner.y + at.y}, pages_.pages.back().items);
}

void PageFlow::stretch_ledger(Length top, Length foot) {
  if (furniture_.ledger == document::Ledger::none) return;
  const std::size_t page = pages_.pages.size() - 1;
  const bool goes_on = !ledgers_.empty() && ledgers_.back().page == page &&
                       ledgers_.back().ledger == furniture_.ledger && continues_;
  if (!goes_on) ledgers_.push_back({page, furniture_.ledger, top, foot});
  ledgers_.back().foot = std::max(ledgers_.back().foot, foot);
}

void PageFlow::new_page() {
  // A ledger that goes on overleaf marks its page to the foot.
  if (continues_) stretch_ledger(frame_height(), frame_height());
  const document::Paper& paper = setting_.style.paper;
  pages_.pages.push_back({paper.width, paper.height, {}});
  level_ = {};
  if (continues_) {
    stretch_ledger({}, {});
    draw(furniture_.continued, {});
    level_.main = furniture_.continued_body;
    level_.margin = furniture_.continued_margin;
    level_.margin_foot = furniture_.continued_margin;
  }
  place_waiting();
}

Length PageFlow::foot_for(const Slice& slice, Length top) const {
  const document::Paper& paper = setting_.style.paper;
  const Length fold = paper.height / 2 - paper.top - kFromFold;
  return slice.fold == Slice::Fold::above && top < fold ? fold : frame_height();
}

void PageFlow::cross_fold() {
  const document::Paper& paper = setting_.style.paper;
  const Length fold = paper.height / 2 - paper.top;
  if (level_.main > fold || level_.at_top) return;
  const Point corner = frame_corner();
  Frame marks;
  const Stroke stroke{points(0.5), setting_.style.ink2, {points(3), points(2)}};
  const auto mark = [&](Point from, Point to) {
    marks.items.emplace_back(drawn_line({from.x - corner.x, from.y - corner.y},
                                        {to.x - corner.x, to.y - corner.y}, stroke, kArtifact));
  };
  const Point middle{paper.width / 2, paper.height / 2};
  mark({kEdge, middle.y}, {kEdge + kMark, middle.y});
  mark({paper.width - kEdge - kMark, middle.y}, {paper.width - kEdge, middle.y});
  mark({middle.x, kEdge}, {middle.x, kEdge + kMark});
  mark({middle.x, paper.height - kEdge - kMark}, {middle.x, paper.height - kEdge});
  draw(marks, {});
  level_.main = level_.margin = level_.margin_foot = fold + kFromFold;
  level_.at_top = false;
}

void PageFlow::place_waiting() {
  std::vector<SideItem> waiting = std::exchange(waiting_, {});
  bool first = true;
  for (std::size_t i = 0; i < waiting.size(); ++i) {
    SideItem& item = waiting[i];
    const Length top = std::max(level_.margin, first ? item.drop : Length{});
    const Length room = frame_height() - top;
    if (item.frame.height > room) {
      std::optional<Frame> part;
      if (first) part = cut_off(item.frame, room);
      if (part) draw(*part, {{}, top});
      if (!part && first) {
        // Nothing to cut: it stands over rather than being lost.
        draw(item.frame, {{}, top});
        ++i;
      }
      level_.margin = level_.margin_foot = frame_height();
      waiting_.assign(std::make_move_iterator(waiting.begin() + static_cast<std::ptrdiff_t>(i)),
                      std::make_move_iterator(waiting.end()));
      return;
    }
    draw(item.frame, {{}, top});
    level_.margin_foot = top + item.frame.height;
    level_.margin = level_.margin_foot + kBetweenNotes;
    first = false;
  }
}

Length PageFlow::head_height(const Level& level, const Slice& slice) const {
  if (!level.at_top || slice.head < 0) return {};
  return chapter_.heads[static_cast<std::size_t>(slice.head)].height;
}

Length PageFlow::top_of(const Level& level, const Slice& slice) const {
  const Length line = setting_.style.line;
  Length top = level.main;
  if (slice.starts_block) top = up_to_grid(top + (level.at_top ? Length{} : slice.above), line);
  if (slice.full && level.margin_foot > top) {
    const bool on_grid = slice.starts_block || level.at_top;
    const Length clear = level.margin_foot + kUnderMargin;
    top = on_grid ? up_to_grid(clear, line) : std::max(top, level.margin_foot);
  }
  // Under a repeated eyebrow the text keeps to the page's top.
  if (slice.level_with_margin && !level.at_top && !slice.beside.empty()) {
    const Length level_top = level.margin - slice.beside.front().drop;
    if (level_top > top) top = up_to_grid(level_top, line);
  }
  if (slice.at_foot) top = std::max(top, frame_height() - slice.frame.height);
  return top + head_height(level, slice);
}

Length PageFlow::down_with_text(const Level& level, std::size_t first, std::size_t last) const {
  if (!chapter_.slices[first].heading || level.at_top) return {};
  Level passed = level;
  std::size_t i = first;
  for (; i < last && chapter_.slices[i].heading; ++i)
    pass(passed, chapter_.slices[i]);
  const Slice& text = chapter_.slices[i];
  if (text.heading) return {};
  Level clear = passed;
  clear.margin = clear.margin_foot = {};
  return top_of(passed, text) - top_of(clear, text);
}

std::optional<Length> PageFlow::margin_top(const Level& level, Length top,
                                           const SideItem& item) const {
  const Length wanted = std::max(top + item.drop, level.margin);
  if (wanted + item.frame.height <= frame_height()) return wanted;
  if (item.warns) return std::nullopt;
  // At the foot of a page a note may begin above its paragraph's line rather than leave the page.
  const Length lifted = frame_height() - item.frame.height;
  if (lifted >= level.margin) return lifted;
  return std::nullopt;
}

Length PageFlow::pass(Level& level, const Slice& slice) const {
  const Length top = top_of(level, slice);
  const Length foot = top + slice.frame.height;
  level.at_top = false;
  level.main = foot;
  if (slice.full) level.margin = level.margin_foot = foot;
  bool fits = true;
  for (const SideItem& item : slice.beside) {
    const std::optional<Length> at = margin_top(level, top, item);
    fits = fits && (at || !item.warns);
    if (!at) continue;
    level.margin_foot = *at + item.frame.height;
    level.margin = level.margin_foot + kBetweenNotes;
  }
  return fits ? foot : std::max(foot, frame_height() + setting_.style.line);
}

Length PageFlow::overflow(std::size_t first, std::size_t last) const {
  Level level = level_;
  level.main += down_with_text(level, first, last);
  Length foot;
  for (std::size_t i = first; i <= last; ++i)
    foot = std::max(foot, pass(level, chapter_.slices[i]));
  return std::max(Length{}, foot - frame_height());
}

bool PageFlow::shrink_to_fit(std::size_t first, std::size_t last) {
  const Length over = overflow(first, last);
  if (over.thousandths == 0) return true;
  Length possible;
  for (std::size_t i = first; i <= last; ++i)
    possible += chapter_.slices[i].shrinkable;
  if (possible < over) return false;
  Length left = over;
  for (std::size_t i = first; i <= last; ++i) {
    Slice& slice = chapter_.slices[i];
    const Length by = std::min(left, slice.shrinkable);
    if (by.thousandths == 0) continue;
    shrink_picture(slice, by);
    left -= by;
  }
  return overflow(first, last).thousandths == 0;
}

void PageFlow::put_beside(std::vector<SideItem>& items, Length top) {
  for (SideItem& item : items) {
    const std::optional<Length> at =
        waiting_.empty() ? margin_top(level_, top, item) : std::nullopt;
    if (!at) {
      waiting_.push_back(std::move(item));
      continue;
    }
    draw(item.frame, {{}, *at});
    level_.margin_foot = *at + item.frame.height;
    level_.margin = level_.margin_foot + kBetweenNotes;
  }
}

void PageFlow::put(Slice& slice) {
  if (slice.fold == Slice::Fold::here) return cross_fold();
  if (!slice.columns.empty()) return place_columns(slice);
  const Length top = top_of(level_, slice);
  const Length head = head_height(level_, slice);
  if (head.thousandths > 0) {
    draw(chapter_.heads[static_cast<std::size_t>(slice.head)], {{}, top - head});
  }
  draw(slice.frame, {{}, top});
  const Anchor here{static_cast<int>(pages_.pages.size()) - 1, frame_corner().y + top};
  for (const std::string& anchor : slice.anchors)
    pages_.anchors.emplace(anchor, here);
  if (slice.bookmark) {
    pages_.bookmarks.push_back({slice.bookmark->words, here, slice.bookmark->level});
  }
  level_.at_top = false;
  level_.main = top + slice.frame.height;
  if (slice.full) level_.margin = level_.margin_foot = level_.main;
  put_beside(slice.beside, top);
  const bool page_top = top == head;
  stretch_ledger(page_top ? Length{} : top, level_.main);
  continues_ = true;
}

void PageFlow::place_piecewise(Slice& slice) {
  while (top_of(level_, slice) + slice.frame.height > frame_height()) {
    const Length room = frame_height() - top_of(level_, slice);
    std::optional<Frame> part = cut_off(slice.frame, room);
    if (!part && level_.at_top && !(slice.full && margin_is_taken())) break;
    if (!part) {
      new_page();
      continue;
    }
    Slice piece = slice;
    piece.frame = std::move(*part);
    piece.bookmark = std::exchange(slice.bookmark, std::nullopt);
    slice.beside.clear();
    slice.anchors.clear();
    put(piece);
    new_page();
  }
  put(slice);
}

/// Both columns as far as this page takes them; the rest of each on the next.
void PageFlow::place_columns(Slice& slice) {
  std::vector<SliceColumn> columns = std::exchange(slice.columns, {});
  while (true) {
    const Length top = top_of(level_, slice);
    const Length foot = foot_for(slice, top);
    const Length room = foot - top;
    const bool must = level_.at_top && !margin_is_taken();
    const bool little = foot == frame_height() && room < setting_.style.line * kLeastLines &&
                        slice.frame.height > room;
    std::optional<TakenColumns> taken;
    if (must || !little) taken = take_columns(columns, room, must);
    if (taken) {
      const Anchor here{static_cast<int>(pages_.pages.size()) - 1, frame_corner().y + top};
      for (const TakenColumns::At& at : taken->places) {
        const Anchor there{here.page, here.y + at.y};
        for (const std::string& anchor : at.anchors)
          pages_.anchors.emplace(anchor, there);
        if (at.bookmark)
          pages_.bookmarks.push_back({at.bookmark->words, there, at.bookmark->level});
      }
      slice.frame = std::move(taken->frame);
      put(slice);
    }
    if (all_taken(columns)) return;
    if (foot < frame_height()) {
      cross_fold();
    } else {
      new_page();
    }
  }
}

bool PageFlow::margin_is_taken() const {
  const Length bare = continues_ ? furniture_.continued_margin : Length{};
  return level_.at_top && level_.margin_foot > bare;
}

void PageFlow::place_one(Slice& slice) {
  if (!slice.columns.empty()) return place_columns(slice);
  const auto fits = [&] { return top_of(level_, slice) + slice.frame.height <= frame_height(); };
  if (!fits() && !level_.at_top) new_page();
  while (!fits() && slice.full && margin_is_taken())
    new_page();
  if (fits()) {
    put(slice);
  } else {
    place_piecewise(slice);
  }
}

void PageFlow::place_group(std::size_t first, std::size_t last) {
  if (first == last && !chapter_.slices[first].columns.empty()) {
    return place_columns(chapter_.slices[first]);
  }
  const bool fresh = level_.at_top;
  if (!shrink_to_fit(first, last) && !fresh) new_page();
  while (margin_is_taken() && !shrink_to_fit(first, last))
    new_page();
  if (shrink_to_fit(first, last)) {
    level_.main += down_with_text(level_, first, last);
    for (std::size_t i = first; i <= last; ++i)
      put(chapter_.slices[i]);
    return;
  }
  // Too much for any page: it parts before the last block that no heading holds.
  for (std::size_t i = last; i > first; --i) {
    if (!chapter_.slices[i].starts_block) continue;
    // An opening that long has said something: a subhead may leave it for its own text.
    const bool opened = i == 1 && chapter_.slices[1].heading &&
                        chapter_.slices[0].frame.height > frame_height() / 3;
    if (chapter_.slices[i - 1].heading && !opened) continue;
    place_group(first, i - 1);
    place_group(i, last);
    return;
  }
  for (std::size_t i = first; i <= last; ++i) {
    // Rather in two pieces than away from its heading.
    const bool tall = chapter_.slices[i].frame.height > frame_height() / 2;
    if (i > first && chapter_.slices[i - 1].heading && tall) {
      place_piecewise(chapter_.slices[i]);
    } else {
      place_one(chapter_.slices[i]);
    }
  }
}

void PageFlow::place_cover(const Frame& cover, bool goes_on) {
  new_page();
  Slice slice;
  slice.frame = cover;
  slice.full = true;
  place_one(slice);
  continues_ = false;
  if (!goes_on) level_.main = frame_height();
}

bool PageFlow::all_fits() const {
  return overflow(0, chapter_.slices.size() - 1).thousandths == 0;
}

bool PageFlow::room_to_open() const {
  constexpr int kLinesUnderOpening = 8;
  const Length least =
      chapter_.slices.front().frame.height + setting_.style.line * kLinesUnderOpening;
  const Length room = frame_height() - top_of(level_, chapter_.slices.front());
  return furniture_.keeps_together ? all_fits() : room >= least || all_fits();
}

void PageFlow::place_chapter(const ChapterFurniture& furniture, Slices chapter) {
  finish();
  chapter_ = std::move(chapter);
  if (chapter_.slices.empty()) return;
  furniture_ = furniture;
  continues_ = false;
  if (pages_.pages.empty() || (!level_.at_top && (furniture.starts_page || !room_to_open()))) {
    new_page();
  }
  std::size_t first = 0;
  for (std::size_t i = 0; i < chapter_.slices.size(); ++i) {
    if (chapter_.slices[i].keep_with_next && i + 1 < chapter_.slices.size()) continue;
    place_group(first, i);
    first = i + 1;
  }
}

void PageFlow::finish() {
  while (!waiting_.empty())
    new_page();
}

}  // namespace winchbook::layout
