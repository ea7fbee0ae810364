#pragma once

#include <map>
#include <string>
#include <vector>

#include "document/document.h"
#include "report/telling.h"

/// What the chapters of the collector statement share. Every row says in words how sure it is and
/// by what, so that a stranger needs no key, and takes the pages that needs.
namespace winchbook::report {

/// "a", "b", … "z", "aa": how the statement points at a mark.
[[nodiscard]] std::string mark_letter(std::size_t index);
/// "mark a", "marks a and c"; empty when there is none.
[[nodiscard]] std::string marks_named(const Telling& telling,
                                      const std::vector<record::MarkingId>& marks);
/// "certain", "likely", "possible"; what is said where nobody wrote how sure.
[[nodiscard]] std::string how_sure(const Telling& telling,
                                   const std::optional<record::Certainty>& certainty);
/// The reason, and the marks and people that bear it out.
[[nodiscard]] document::Text grounds(const Telling& telling, const record::Evidence& evidence);
/// A subhead at the left of its page or half, under a rule.
[[nodiscard]] document::Subhead ruled_subhead(const Telling& telling, const char* key,
                                              bool dashed = false);
/// A paragraph in the type of tables.
[[nodiscard]] document::Paragraph note_paragraph(document::Text words);
[[nodiscard]] document::Paragraph note_paragraph(std::string words);

/// "Skerry No. 40, serial H 4417": what a stranger calls it; its own name where neither is known.
/// The family's name for a reel belongs to the family.
[[nodiscard]] std::string reel_in_trade(const Telling& telling);

/// The same, or another name of the reel, as a title has it: with the words that it was put
/// together from several, where it was.
[[nodiscard]] std::string titled(const Telling& telling, std::string name);
/// "Assembled from at least two reels."; empty of one reel.
[[nodiscard]] std::string assembled_sentence(const Telling& telling);

/// "A multiplying reel by Harroway Reel Works of Port Ellery."
[[nodiscard]] std::string kind_and_maker(const Telling& telling);

/// How many named faults stand as it is left.
[[nodiscard]] std::size_t standing_faults(const Telling& telling);

/// Eight figures as found and as left, and the words that there is no total.
void add_statement_figures(const Telling& telling, document::Chapter& chapter);

/// Every mark with its ends and reasons, and what else narrows the years.
void add_statement_marks(const Telling& telling, document::Chapter& chapter);

/// What stands and what was put right, what to beware of, the bench's own interest.
[[nodiscard]] std::vector<document::HalfBlock> statement_faults(const Telling& telling);
/// Who had it, earliest first, with names as far as the reader may see them.
[[nodiscard]] std::vector<document::HalfBlock> statement_custody(const Telling& telling);

}  // namespace winchbook::report
