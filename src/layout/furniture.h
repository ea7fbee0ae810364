#pragma once

#include <vector>

#include "layout/frame.h"

namespace winchbook::layout {

/// A stretch of a page that a ledger fills, measured from the frame's top.
struct LedgerStretch {
  std::size_t page = 0;
  document::Ledger ledger = document::Ledger::none;
  Length top;
  Length foot;
};

/// What the flow knows of its pages besides their text.
struct PagesFilled {
  const std::vector<LedgerStretch>& ledgers;
  const std::vector<std::size_t>& copies;  ///< first pages of what is counted by itself
};

/// Numbers, name and code at the foot of every page but a cover standing alone, and the ledgers'
/// edge marks along the stretches they fill, so that fanned pages show them and nothing else: a
/// mark over the whole page would count the chapter that begins below to the ledger. A copy's pages
/// are counted from its own first to its own last.
void add_furniture(const document::Document& document, const PagesFilled& filled,
                   const Setting& setting, Pages& pages);

}  // namespace winchbook::layout
