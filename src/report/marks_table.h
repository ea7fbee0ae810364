#pragma once

#include <map>
#include <optional>

#include "document/document.h"
#include "report/telling.h"

namespace winchbook::report {

/// Whose marks: those that came with the reel and those on what the bench put in never stand in one
/// table.
enum class MarksOf { reel, bench };

/// The evidence that each mark is; a mark of which the tables say several things has several, and
/// the first that names years is told.
[[nodiscard]] std::map<record::MarkingId, std::size_t> evidence_by_mark(const Telling& telling);

/// Each mark whole, where it stands, whose it is, what it says of its piece and what that did to
/// the answer.
[[nodiscard]] std::optional<document::Table> marks_table(const Telling& telling, MarksOf of);

/// What is not a mark and speaks of the year: materials, fasteners, what was told.
[[nodiscard]] std::optional<document::Table> other_evidence_table(const Telling& telling);

}  // namespace winchbook::report
