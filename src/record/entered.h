#pragma once

#include <vector>

#include "record/record.h"

namespace winchbook::record {

/// Whether anything was entered about a place: a piece that is or was in it, or a finding. One that
/// only stands in the list, to be ticked, counts towards nothing.
[[nodiscard]] bool is_entered(const Record& record, const Place& place);

/// The places in which no piece ever sat by the record, and which nobody found empty: whoever names
/// one brings its piece into being.
[[nodiscard]] std::vector<const Place*> places_without_piece(const Record& record);

/// The places of the list about which nothing was entered, in its order.
[[nodiscard]] std::vector<const Place*> places_not_entered(const Record& record);

}  // namespace winchbook::record
