#pragma once

#include <string_view>

#include "record/record.h"
#include "xml/document.h"

namespace winchbook::daybook {

/// Puts a sentence as it was typed into an element. People of the record who are named in plain
/// words are pointed at (app/named_people.h). A sentence may also hold the record's own elements of
/// a sentence: <person ref="gus"/>, <piece ref="knob">the knob</piece>, <photo ref="ph-foot"/>,
/// <emphasis>…</emphasis> and, in a paragraph, <note>…</note>; any other angle brackets are text.
void put_typed_words(const record::Record& record, std::string_view text, pugi::xml_node into);

}  // namespace winchbook::daybook
