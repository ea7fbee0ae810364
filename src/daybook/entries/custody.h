#pragma once

#include <string>
#include <vector>

#include "daybook/edit.h"

namespace winchbook::daybook {

/// Somebody had the reel; or, without a holder, nobody knows who had it.
struct CustodyRequest {
  std::string id;      ///< empty: made from the holder
  std::string holder;  ///< a person as named; empty: a gap
  std::string held = "both";
  std::string from;
  std::string until;
  std::string how;  ///< of a gap: what little is known
  std::string source;
  std::string certainty = "certain";
  std::vector<std::string> photos;
};

/// Adds the step or the gap, before what surely began later.
[[nodiscard]] Change custody(CustodyRequest request);

}  // namespace winchbook::daybook
