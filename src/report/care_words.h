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

/// The flags that matter so, the bench's own first (they always do). Hazards before legal traps.
[[nodiscard]] std::vector<ToldFlag> flags_told(const Telling& telling,
                                               std::initializer_list<knowledge::Matters> matters);
/// The same as cautions, without those of which a caution among `said` speaks already. A short form
/// for a card or a margin.
[[nodiscard]] std::vector<document::Caution> flag_cautions(
    const Telling& telling, std::initializer_list<knowledge::Matters> matters,
    const std::vector<record::Caution>& said = {});

/// The caution beside a piece of work: the bench's own where it wrote one, else what its method and
/// its pieces ask for; nothing when nothing does.
[[nodiscard]] std::optional<document::Caution> caution_beside(const Telling& telling,
                                                              const record::StripStep& step);
[[nodiscard]] std::optional<document::Caution> caution_beside(const Telling& telling,
                                                              const record::Cleaning& cleaning);
[[nodiscard]] std::optional<document::Caution> caution_beside(const Telling& telling,
                                                              const record::Work& work);
/// For a piece that is handled by itself: a bag, a place of the tray.
[[nodiscard]] std::optional<document::Caution> caution_for(const Telling& telling,
                                                           const record::PieceId& piece);

}  // namespace winchbook::report
