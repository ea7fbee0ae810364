#pragma once

#include <string>

#include "document/document.h"
#include "report/telling.h"

namespace winchbook::report {

/// Whether anybody entered whose a part is, or looked at its surface.
[[nodiscard]] bool says_anything_of_parts(const Telling& telling);

/// The sign and the words of whose a part is; bold where it is not whose it was.
[[nodiscard]] document::Text standing_words(const Telling& telling,
                                            assess::originality::Standing standing, bool changed);
/// The state of three quarters of a surface or more; a surface without such a state is mixed.
[[nodiscard]] std::string surface_words(const Telling& telling,
                                        const assess::originality::Side& side);
/// "Plate screws, six".
[[nodiscard]] std::string row_name(const Telling& telling,
                                   const assess::originality::PieceRow& row);
/// The piece in this row, when its marks do not agree with the others'.
[[nodiscard]] const assess::dating::Suspect* suspect_of(const Telling& telling,
                                                        const assess::originality::PieceRow& row);
/// What the dating proposes is told beside the record's own answer, which stands.
void add_proposal(const Telling& telling, const assess::dating::Suspect& suspect,
                  document::Text& words);
/// The reasons for what the dating proposes, a sentence for each piece.
[[nodiscard]] std::string proposals(const Telling& telling);
/// A long ledger goes by assembly, in the record's order.
void start_assembly(const Telling& telling, const std::string& assembly, document::Table& table);
/// What each sign stands for.
[[nodiscard]] document::Text key_to_signs(const Telling& telling);
/// How many of its parts are the maker's own, in one sentence or two.
[[nodiscard]] std::string ledger_answer(const Telling& telling,
                                        const assess::originality::Finding& finding);

}  // namespace winchbook::report
