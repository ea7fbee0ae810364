#pragma once

#include <vector>

#include "layout/frame.h"

namespace winchbook::layout {

/// Numbers, name and code at the foot of every page but a cover standing alone, and the ledgers'
/// edge marks (PAGES, "Furniture"). `ledgers` has one entry a page.
void add_furniture(const document::Document& document,
                   const std::vector<document::Ledger>& ledgers, const Setting& setting,
                   Pages& pages);

}  // namespace winchbook::layout
