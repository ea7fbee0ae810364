#pragma once

#include <string>
#include <vector>

#include "daybook/draft.h"
#include "recordfile/write_record.h"

namespace winchbook::daybook {

/// Takes over from an earlier reel of the model: places, a piece for each, and the steps of taking
/// apart into the draft's last visit. No people, no photographs. Gives what was fitted before, as a
/// bench's own notes in the places.
[[nodiscard]] std::vector<recordfile::OwnNote> take_over(const record::Record& earlier,
                                                         Draft& draft);

/// Adds a place and one piece that fills it, of which nothing is known but what it is; gives the
/// piece's id. A place without an id gets one.
record::PieceId add_filled_place(record::Place place, const std::string& material, Draft& draft);

}  // namespace winchbook::daybook
