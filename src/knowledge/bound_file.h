#pragma once

#include <string>
#include <vector>

#include "knowledge/marks.h"
#include "xml/document.h"

namespace winchbook::knowledge {

/// What an element with not-before, not-after, basis and source says. A date that the calendar does
/// not have, or an end before its beginning, is a fault with its place.
[[nodiscard]] MarkBound bound_from(const xml::Document& document, pugi::xml_node node,
                                   base::Diagnostics& faults);

/// The `form` children.
[[nodiscard]] std::vector<std::string> forms_from(pugi::xml_node node);

}  // namespace winchbook::knowledge
