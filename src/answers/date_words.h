#pragma once

#include <string>

#include "answers/grade_words.h"
#include "assess/dating/dating.h"
#include "record/record.h"
#include "words/catalogue.h"

namespace winchbook::answers {

/// The words by which `winchbook date` tells answers.
[[nodiscard]] Term term(assess::dating::Grounds grounds);
[[nodiscard]] Term term(assess::dating::Basis basis);
[[nodiscard]] Term term(assess::dating::Side side);
[[nodiscard]] Term term(assess::dating::Tier tier);
[[nodiscard]] Term term(assess::dating::LeftOut reason);
[[nodiscard]] Term term(assess::dating::EndUse use);
[[nodiscard]] Term term(assess::dating::Warning::Kind kind);
[[nodiscard]] Term term(record::EndFirmness firmness);

/// The mark as read, its lines parted by " / "; what is withheld is said to be.
[[nodiscard]] std::string as_read(const record::Marking& mark, const words::Catalogue& words);
/// The piece's name; the reel itself for an empty id.
[[nodiscard]] std::string piece_name(const record::Record& record, const record::PieceId& piece,
                                     const words::Catalogue& words);
/// What speaks: “PAT. 2,185,170” on the tail plate; acetal, of which the spool is made.
[[nodiscard]] std::string speaker(const record::Record& record,
                                  const assess::dating::Evidence& evidence,
                                  const words::Catalogue& words);

}  // namespace winchbook::answers
