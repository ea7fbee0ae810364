#pragma once

#include "record/record.h"

namespace winchbook::record {

/// What a visit's findings say of a piece at one moment, as it was entered; or null.
[[nodiscard]] const PieceState* state_entered(const Visit& visit, const PieceId& piece,
                                              Moment moment);

/// How a piece was at one moment: as it was entered. Where nobody wrote it as left and the visit
/// did not take the piece out, it is as it was found, changed by the acts entered: what was
/// untouched and cleaned is cleaned, what lay loose and was put back is fitted.
[[nodiscard]] std::optional<PieceState> state_of(const Record& record, const Visit& visit,
                                                 const PieceId& piece, Moment moment);

/// Whether the state speaks of a piece that is there, in its place or out of it.
[[nodiscard]] bool is_there(const PieceState& state);

/// How grave a fault is at one moment; empty: it is not there. One that nobody looked at again
/// stands as it was found.
[[nodiscard]] std::optional<Severity> severity_at(const Fault& fault, Moment moment);

/// Whether somebody wrote that the fault was put right.
[[nodiscard]] bool put_right(const Fault& fault);

/// Whether anything was written of a test's result: that it was not made is something, too, when
/// it bears its day or its words.
[[nodiscard]] bool is_written(const TestResult& result);

/// Whose the uppermost finish is at that moment: the maker's when nothing is laid over his. A layer
/// of the bench counts as left in the visit in which it was laid and from then on; one without a
/// date, as left only.
[[nodiscard]] FinishBy uppermost_finish(const Piece& piece, const Visit& visit, Moment moment);

}  // namespace winchbook::record
