#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "daybook/draft.h"
#include "record/find_named.h"

/// The parts that an entry names. A place of the list about which nothing was entered gets its
/// piece and its fitting, by nobody known, at the first entry that names it; every verb finds its
/// parts here. What was found in the record's pieces before is moved by it.
namespace winchbook::daybook {

[[nodiscard]] base::Result<const record::Piece*> piece_named(Draft& draft, std::string_view said);

/// Several; all faults together.
[[nodiscard]] base::Result<std::vector<const record::Piece*>> pieces_named(
    Draft& draft, const std::vector<std::string>& said);

/// "tail screws: 4"; all of it when no number is given. A number that is said of a place of the
/// list is how many belong there.
[[nodiscard]] base::Result<std::vector<record::CountedPiece>> counted_named(
    Draft& draft, const std::vector<std::string>& said);

/// Every place of the list gets its piece: whoever says all says it of each.
void name_all_places(Draft& draft);

/// The piece that sits in a place; a place of the list gets it now.
record::PieceId piece_of(Draft& draft, const record::PlaceId& place);

}  // namespace winchbook::daybook
