#pragma once

#include "record/record.h"

namespace winchbook::record {

/// What a visit's findings say of a piece at one moment, or null.
[[nodiscard]] const PieceState* state_of(const Visit& visit, const PieceId& piece, Moment moment);

/// Whose the uppermost finish is at that moment: the maker's when nothing is laid over his. A layer
/// of the bench counts as left in the visit in which it was laid and from then on; one without a
/// date, as left only.
[[nodiscard]] FinishBy uppermost_finish(const Piece& piece, const Visit& visit, Moment moment);

}  // namespace winchbook::record
