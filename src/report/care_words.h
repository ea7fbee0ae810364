#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <vector>

#include "assess/care/care.h"
#include "document/document.h"
#include "report/telling.h"

/// What to beware of, in words: cautions that stand beside the work, and flags for a reader.
namespace winchbook::report {

/// A flag as a document tells it: the bench's own, what the record's materials and dates add to it,
/// or one that only they raise.
struct ToldFlag {
  bool legal = false;
  std::string word;      ///< of the rule, "asbestos"; empty: the bench's own, of no rule
  std::string name;      ///< "asbestos-type washers"
  document::Text words;  ///< what, which pieces, why, what to do; defers where it must
  std::vector<record::PieceId> pieces;
  bool written = false;  ///< by the bench
};

/// The flags that matter so, the bench's own first (they always do), then what only materials and
/// dates say. With `sources`, where each of those was read stands behind it, and the law of
/// dealing.
[[nodiscard]] std::vector<ToldFlag> flags_told(const Telling& telling,
                                               std::initializer_list<knowledge::Matters> matters,
                                               bool sources = false);
/// The same as cautions of a few words for a card or a margin: the bench's own hazards that matter
/// so, then what materials and dates add; without what the advice on care speaks of.
[[nodiscard]] std::vector<document::Caution> flag_cautions(
    const Telling& telling, std::initializer_list<knowledge::Matters> matters);
/// Only what materials and dates add, without what the bench says anywhere in this stay.
[[nodiscard]] std::vector<document::Caution> further_cautions(
    const Telling& telling, std::initializer_list<knowledge::Matters> matters);

/// What the ratchet is called on such a reel: "click" on a multiplier, "check" on a fly reel.
[[nodiscard]] std::string ratchet_word(const Telling& telling);
/// "It should come back to a bench by …, or sooner if …": the signs follow from what the reel is
/// for, how it brakes and what it is of. Empty when no day is written.
[[nodiscard]] std::string next_service_words(const Telling& telling);

using CautionList = std::vector<document::Caution>;

/// The cautions beside a piece of work: the bench's own where it wrote one, else what its method,
/// its acts and its pieces ask for; and always that no eye can tell what it made dust of. None when
/// nothing asks for one.
[[nodiscard]] CautionList cautions_beside(const Telling& telling, const record::StripStep& step);
/// The same without the spring that it only says to be loose.
[[nodiscard]] CautionList cautions_of_acts(const Telling& telling, const record::StripStep& step);
[[nodiscard]] CautionList cautions_beside(const Telling& telling, const record::Cleaning& cleaning);
[[nodiscard]] CautionList cautions_beside(const Telling& telling, const record::Work& work);

}  // namespace winchbook::report
