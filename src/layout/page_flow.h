#pragma once

#include <vector>

#include "layout/furniture.h"
#include "layout/slice.h"

namespace winchbook::layout {

/// What a chapter's pages carry besides its text.
struct ChapterFurniture {
  document::Ledger ledger = document::Ledger::none;
  bool starts_page = false;
  bool keeps_together = false;
  Frame continued;          ///< rule and eyebrow at the top of each page after its first
  Length continued_body;    ///< where main goes on under that rule
  Length continued_margin;  ///< and where the margin does, clear of the eyebrow
};

/// Fills page after page in reading order. Breaks only between slices that let it; the margin's
/// items stand level with their slices, lower where something stands there already, and on the next
/// page when this one has no room for them.
class PageFlow {
 public:
  PageFlow(const Setting& setting, Pages& pages) : setting_(setting), pages_(pages) {}

  /// A page with one frame on it; `goes_on` lets the next chapter begin below.
  void place_cover(const Frame& cover, bool goes_on);
  /// A chapter; its first slice is its opening.
  void place_chapter(const ChapterFurniture& furniture, Slices chapter);

  /// Places what still waits for the margin.
  void finish();

  /// For each page, whose edge mark it carries.
  [[nodiscard]] const std::vector<LedgerStretch>& ledgers() const { return ledgers_; }

 private:
  /// How far a page is filled.
  struct Level {
    Length main;         ///< where main goes on
    Length margin;       ///< where the margin's next item may stand
    Length margin_foot;  ///< the foot of what stands in the margin
    bool at_top = true;
  };

  [[nodiscard]] Length frame_height() const;
  [[nodiscard]] Point frame_corner() const;
  [[nodiscard]] Length head_height(const Level& level, const Slice& slice) const;
  [[nodiscard]] Length top_of(const Level& level, const Slice& slice) const;
  /// How far headings at the beginning of a group go down because the text under them has to keep
  /// clear of the margin: they stay with it.
  [[nodiscard]] Length down_with_text(const Level& level, std::size_t first,
                                      std::size_t last) const;
  [[nodiscard]] std::optional<Length> margin_top(const Level& level, Length top,
                                                 const SideItem& item) const;
  /// Raises the level by a slice without placing it; returns the slice's foot.
  Length pass(Level& level, const Slice& slice) const;
  [[nodiscard]] Length overflow(std::size_t first, std::size_t last) const;
  bool shrink_to_fit(std::size_t first, std::size_t last);

  void new_page();
  void place_waiting();
  /// Lets the ledger's stretch on this page reach from `top` to `foot`.
  void stretch_ledger(Length top, Length foot);
  /// Whether the whole chapter fits on what is left of the page.
  [[nodiscard]] bool all_fits() const;
  /// Whether the chapter's opening and eight lines of it, or all of a shorter one, fit here.
  [[nodiscard]] bool room_to_open() const;
  /// The margin of a fresh page may be full of what waited for it.
  [[nodiscard]] bool margin_is_taken() const;
  void place_group(std::size_t first, std::size_t last);
  void place_one(Slice& slice);
  void place_piecewise(Slice& slice);
  void place_columns(Slice& slice);
  void put(Slice& slice);
  void put_beside(std::vector<SideItem>& items, Length top);
  /// The foot of what may stand on this page from `top` on: the fold, where the slice stays above.
  [[nodiscard]] Length foot_for(const Slice& slice, Length top) const;
  /// Marks the fold of this page and goes on below it; nothing where that is past.
  void cross_fold();
  void draw(const Frame& frame, Point at);

  const Setting& setting_;
  Pages& pages_;
  ChapterFurniture furniture_;
  Slices chapter_;
  Level level_;
  std::vector<SideItem> waiting_;
  std::vector<LedgerStretch> ledgers_;
  bool continues_ = false;  ///< the page to come carries on a chapter
};

/// Marks what must not be parted: headings from the three lines after them, an opening from eight.
void keep_with_headings(Slices& chapter, Length line);

}  // namespace winchbook::layout
