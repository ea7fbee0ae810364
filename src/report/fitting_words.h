#pragma once

#include <string>

#include "report/telling.h"

namespace winchbook::report {

/// Which reel or which bench gave the piece.
[[nodiscard]] std::string donor_words(const Telling& telling, const record::Piece& piece);
/// Where the old piece is now.
[[nodiscard]] std::string old_piece_words(const Telling& telling, const record::Fitting& fitting);
/// How many pieces the entries put in: three washers are one entry and three pieces.
[[nodiscard]] std::string second_ledger_answer(const Telling& telling, std::size_t entries);

/// How far it can be undone in a word, then the bench's words, which often begin with it: "Mostly.
/// The old screw can go back."
[[nodiscard]] document::Text way_back_words(const Telling& telling,
                                            const record::WayBack& way_back);

}  // namespace winchbook::report
