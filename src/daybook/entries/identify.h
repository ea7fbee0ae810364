#pragma once

#include <string>

#include "daybook/edit.h"
#include "daybook/evidence.h"

namespace winchbook::daybook {

/// What the reel is; what is empty is not said. The evidence is the maker's or the date's, so only
/// one of the two is given with it.
struct IdentifyRequest {
  std::string name;  ///< what the documents call it
  std::string model;
  std::string brake;
  std::string maker;
  std::string maker_kind;  ///< "made-by", "attributed-to", "not-determined"
  std::string maker_place;
  std::string still_trading;  ///< "yes", "no"
  std::string sold_by;
  std::string hand;  ///< "right", or "right, left, right": as made, as found, as left
  std::string how_converted;
  std::string made;  ///< EDTF
  std::string certainty;
  Evidence evidence;
  std::string box_and_papers;
  std::string cover;         ///< a photograph as named
  std::string own_interest;  ///< the bench's own interest in the reel
  std::string terms;         ///< the bench's, for goods that nobody collects
};

/// Writes it into the record; what is there already is set anew.
[[nodiscard]] Change identify(IdentifyRequest request);

}  // namespace winchbook::daybook
