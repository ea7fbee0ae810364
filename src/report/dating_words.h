#pragma once

#include <string>

#include "assess/dating/dating.h"
#include "document/document.h"
#include "report/telling.h"

namespace winchbook::report {

/// The mark as it is quoted: its first line, or what is said where it is withheld.
[[nodiscard]] std::string quoted(const Telling& telling, const record::Marking& mark);
/// The same with every line of it, as it stands on the piece.
[[nodiscard]] document::Text quoted_whole(const Telling& telling, const record::Marking& mark);
/// What a piece of evidence is called: the mark as quoted, the material, "known by then".
[[nodiscard]] std::string evidence_name(const Telling& telling,
                                        const assess::dating::Evidence& evidence);
/// Whether one of its ends narrowed the window.
[[nodiscard]] bool narrows(const assess::dating::Finding& finding, std::size_t evidence);
/// What is drawn and counted: what the bench said of a mark; of what the tables say, what did
/// something, for a reel of brass is not a bar a piece.
[[nodiscard]] bool speaks_of_the_reel(const assess::dating::Finding& finding, std::size_t evidence);
/// Why a piece of evidence says what it says: the bench's words, or the table's.
[[nodiscard]] document::Text evidence_because(const Telling& telling,
                                              const assess::dating::Evidence& evidence);
/// Why it does not count; empty when one of its ends does.
[[nodiscard]] std::string why_left_out(const Telling& telling, std::size_t evidence);
/// What it did to the answer: "sets the first year", "gives way to firmer ends"; may be empty.
[[nodiscard]] std::string what_it_did(const Telling& telling, std::size_t evidence);

/// "in 1952", "between 1947 and 1948", "in 1960 or later"; empty when nothing is known.
[[nodiscard]] std::string years_in_words(const Telling& telling,
                                         const assess::dating::DaySpan& days);
/// "between 1934 and 1958", "1947 to 1948": the years of the one answer; empty where nothing dates
/// it, or no year fits.
[[nodiscard]] std::string made_years(const Telling& telling);
/// The same as a sentence; empty where nothing dates it.
[[nodiscard]] std::string made_sentence(const Telling& telling);
/// The answer in one sentence or a few that a grandchild understands; empty when no year is known.
[[nodiscard]] std::string dating_answer(const Telling& telling);
/// No year fits all pieces and nothing says which must go: all ways, in words. Empty otherwise.
[[nodiscard]] std::string no_year_fits(const Telling& telling);
/// The doubts, a sentence each: ends that gave way, pieces that do not fit, what the tables say.
[[nodiscard]] std::vector<std::string> dating_doubts(const Telling& telling);
/// "The marks disagree: it says 1963 or later, the others between 1950 and 1952."
[[nodiscard]] std::string disagreement(const Telling& telling,
                                       const assess::dating::Suspect& suspect);

}  // namespace winchbook::report
