#pragma once

#include "layout/set_words.h"
#include "layout/slice.h"

namespace winchbook::layout {

/// A paragraph, a slice a line; two lines at least stay together at either end. `after_text` says
/// that reading text stands just before it, so that its first line is moved in.
void add_paragraph(const document::Paragraph& paragraph, bool after_text, TagId parent,
                   const Setting& setting, Slices& slices);
/// A heading inside a chapter, with its bookmark.
void add_subhead(const document::Subhead& subhead, TagType level, TagId parent,
                 const Setting& setting, Slices& slices);
/// Words in a role's type at `left`, a slice a line, kept two and two. Returns the index of the
/// first slice.
std::size_t add_lines(const std::vector<SetLine>& lines, document::Role role, Length left,
                      const Setting& setting, Slices& slices);

}  // namespace winchbook::layout
