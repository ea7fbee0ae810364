#pragma once

#include <optional>
#include <string>

#include "record/record.h"

namespace winchbook::record {

/// What a visit says about having looked: that nothing was found, that something was, or, where
/// nothing is written, nothing. An entry of the thing itself says that some were found.
[[nodiscard]] std::optional<Looked> looked_for(const Record& record, const Visit& visit,
                                               LookedFor what);

/// The entry that says "none were found", or "some were"; null when there is none.
[[nodiscard]] const Look* find_look(const Visit& visit, LookedFor what);

/// What was entered of it for this visit, by its name; empty when nothing was. Marks, the serial
/// number, the life and what came with it are the reel's: they count for its last visit.
[[nodiscard]] std::string entered(const Record& record, const Visit& visit, LookedFor what);

}  // namespace winchbook::record
