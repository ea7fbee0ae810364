#pragma once

#include "record/record.h"
#include "recordfile/element.h"

namespace winchbook::recordfile {

// Each takes the section's element, which keeps the schema, and puts what it says into the record.

void read_bench(const Element& section, record::Record& record);
void read_reel(const Element& section, record::Record& record);
void read_people(const Element& section, record::Record& record);
void read_custody(const Element& section, record::Record& record);
void read_story(const Element& section, record::Record& record);
void read_life(const Element& section, record::Record& record);
void read_places(const Element& section, record::Record& record);
void read_donors(const Element& section, record::Record& record);
void read_pieces(const Element& section, record::Record& record);
void read_fittings(const Element& section, record::Record& record);
void read_markings(const Element& section, record::Record& record);
void read_visits(const Element& section, record::Record& record);
void read_photos(const Element& section, record::Record& record);
void read_value(const Element& section, record::Record& record);

/// Because of what: words, marks, photographs, people; the children of `element`.
[[nodiscard]] record::Evidence read_evidence(const Element& element);
/// How fully it can be undone; nothing when the child is left out.
[[nodiscard]] std::optional<record::WayBack> read_way_back(const Element& parent);
/// What was found in a visit.
[[nodiscard]] record::Findings read_findings(const Element& element);

}  // namespace winchbook::recordfile
