#pragma once

#include "layout/slice.h"

namespace winchbook::layout {

/// Items in reading type behind a point or number.
void add_list(const document::List& list, TagId parent, const Setting& setting, Slices& slices);
/// Labels and what they stand for, in two columns.
void add_facts(const document::Facts& facts, TagId parent, const Setting& setting, Slices& slices);
/// A chapter's notes, run on in one paragraph, each with its number and its anchor.
void add_notes(const document::Notes& notes, TagId parent, const Setting& setting, Slices& slices);

}  // namespace winchbook::layout
