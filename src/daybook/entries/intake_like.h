#pragma once

#include <string>
#include <vector>

#include "daybook/edit_draft.h"

namespace winchbook::daybook {

/// Takes over from an earlier reel of the model: places, a piece for each, the steps of taking
/// apart, and what was fitted before as a bench's own note in the place. No people, no photographs.
/// Gives the notes, one sentence each.
std::vector<std::string> take_over(Draft& draft, const record::Record& earlier,
                                   pugi::xml_node visit);

/// Adds a place and one piece that fills it, of which nothing is known but what it is; gives the
/// piece's id.
std::string add_filled_place(Draft& draft, const record::Place& place, const std::string& material);

}  // namespace winchbook::daybook
