#pragma once

#include <string>
#include <vector>

#include "daybook/draft.h"
#include "recordfile/write_record.h"

namespace winchbook::daybook {

/// Takes over from an earlier reel of the model: its places, as a list to tick, and the steps of
/// taking apart into the draft's last visit. No people, no photographs. Gives what was fitted
/// before, as a bench's own notes in the places.
[[nodiscard]] std::vector<recordfile::OwnNote> take_over(const record::Record& earlier,
                                                         Draft& draft);

}  // namespace winchbook::daybook
