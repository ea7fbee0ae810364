#pragma once

#include <string>
#include <vector>

#include "base/edtf_date.h"
#include "daybook/edit.h"
#include "knowledge/knowledge.h"

namespace winchbook::daybook {

/// What the trade knows of springs in reels of the kind, and how the bench's language warns of
/// them.
struct SpringLore {
  const knowledge::PartsList* parts = nullptr;  ///< null: only what the record says
  /// What stands beside a step when a spring comes free and no caution is given.
  std::string caution;
  std::string pieces_caution;  ///< the same of a spring that comes out in pieces
};

/// A spring that comes free when some parts come off.
struct LooseSpring {
  const record::Piece* piece = nullptr;
  const record::Piece* freed_by = nullptr;  ///< what held it down; null: it comes off itself
  int pieces = 1;                           ///< in how many it comes out
};

/// One step of taking the reel apart.
struct StripRequest {
  base::Day on;
  std::string what;  ///< in a sentence; or with `step`, nothing
  std::string step;  ///< a step that is written already (taken over from a like reel) and now done
  std::vector<std::string> off;    ///< what comes off, in order; "tail screws: 4"
  std::vector<std::string> found;  ///< what lay loose and is found in this step
  std::string orientation;
  std::string tool;
  bool spring = false;  ///< a spring comes free
  std::string caution;  ///< "Label: words"
  std::vector<std::string> photos;
  SpringLore lore;
};

/// Adds the step and puts what comes off into the tray. Warns of every spring that comes free, of a
/// part that must stay, and of the springs of the next step that is written already. Errors: a part
/// that is off already, or that never sat in the reel.
[[nodiscard]] Change strip(StripRequest request);

/// The springs that come free when these parts come off: those among them whose place holds a
/// spring under load, and those that lose what holds them down and are not off yet.
[[nodiscard]] std::vector<LooseSpring> springs_freed(
    const record::Record& record, const record::Visit& visit,
    const std::vector<const record::Piece*>& pieces, const SpringLore& lore);

}  // namespace winchbook::daybook
