#pragma once

#include <string_view>

#include "record/record.h"

namespace winchbook::recordfile {

/// A sentence as it was typed. People of the record who are named in plain words become mentions
/// (record/named_people.h). A sentence may also hold the record's own elements of a sentence:
/// <person ref="gus"/>, <piece ref="knob">the knob</piece>, <photo ref="ph-foot"/> and
/// <emphasis>…</emphasis>; any other angle brackets are text. Nothing for a blank text. White space
/// stays as it was typed.
[[nodiscard]] record::Words words_of(const record::Record& record, std::string_view typed);

/// The same for paragraphs, parted by empty lines; each may hold a <note>…</note>. Several notes of
/// one paragraph become one.
[[nodiscard]] record::Prose prose_of(const record::Record& record, std::string_view typed);

}  // namespace winchbook::recordfile
