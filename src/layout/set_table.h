#pragma once

#include "layout/slice.h"

namespace winchbook::layout {

/// A table: title, head, a slice a row, and the words below. One table tag however many pages it
/// takes; the head is repeated on each as furniture.
void add_table(const document::Table& table, TagId parent, const Setting& setting, Slices& slices);

}  // namespace winchbook::layout
