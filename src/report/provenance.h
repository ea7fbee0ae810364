#pragma once

#include <string>
#include <vector>

#include "document/document.h"
#include "report/telling.h"

namespace winchbook::report {

/// The provenance in one paragraph, earliest first: a semicolon hands on directly, a full stop says
/// that it is not known what came between, and what lies between is named in square brackets: the
/// record's gaps, and those that its own dates leave open. `notes` receives how each step is known;
/// their raised numbers stand in the text.
[[nodiscard]] document::Text provenance(const Telling& telling, std::vector<document::Text>& notes);

/// How to read it: the key to its signs, with its lead.
[[nodiscard]] document::Text provenance_key(const Telling& telling);

/// Held for work only, stay by stay.
[[nodiscard]] std::string stays_at_bench(const Telling& telling);

}  // namespace winchbook::report
