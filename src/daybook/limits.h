#pragma once

#include <string>
#include <vector>

#include "base/result.h"
#include "daybook/draft.h"

namespace winchbook::daybook {

/// What a command does, or did, to some parts.
struct Deed {
  std::vector<const record::Piece*> pieces;
  std::string told;           ///< all that was typed of it: method, sentence, adaptation
  bool reel_altered = false;  ///< something of the reel itself is cut, bored or bent
};

/// What says that a piece must stay in the reel, by its life or by an agreement of the visit, also
/// one that names it in words; empty when nothing does. A later agreement lifts an earlier one.
[[nodiscard]] std::string limit_on(const record::Record& record, const record::Visit& visit,
                                   const record::Piece& piece);

/// What was agreed in the visit and the deed would break: "no new holes" and a hole that is bored,
/// "no polish" and a wheel, or whatever was agreed when the reel itself is altered; and anything
/// that alters a piece which must stay. Words are weighed by lists, in English, clause by clause,
/// and a clause that says "no", "not" or "without" before the word tells of nothing done; in
/// another language a limit warns only where the reel itself is altered. Errors of rule "limit";
/// warnings when `agreed` names an agreement of the record that does not set the limit itself.
[[nodiscard]] base::Diagnostics limits_broken(const Draft& draft, const record::Visit& visit,
                                              const Deed& deed, const std::string& agreed);

}  // namespace winchbook::daybook
