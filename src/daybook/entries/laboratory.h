#pragma once

#include <optional>
#include <string>
#include <vector>

#include "daybook/entry.h"
#include "record/pieces.h"

namespace winchbook::daybook {

/// A laboratory's report on what no eye can tell of some parts.
struct LaboratoryRequest : Entry {
  std::vector<std::string> parts;  ///< as they were named
  std::optional<record::Hazard> hazard;
  std::optional<record::Looked> found;
  std::string laboratory;                  ///< its name
  std::string number;                      ///< the report's
  std::optional<base::EdtfDate> reported;  ///< the day of the report; empty: the day of the entry
};

/// Adds the report to each part; one of the same number is put in the place of the one before.
/// Error: a report without its number, its laboratory or its answer.
[[nodiscard]] base::Result<Said> laboratory(const LaboratoryRequest& request, Draft& draft);

[[nodiscard]] forms::Job laboratory_job();

}  // namespace winchbook::daybook
