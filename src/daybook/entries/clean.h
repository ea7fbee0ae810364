#pragma once

#include <string>
#include <vector>

#include "base/edtf_date.h"
#include "daybook/ask_care.h"
#include "daybook/edit.h"

namespace winchbook::daybook {

/// How some parts were cleaned.
struct CleanRequest {
  base::Day on;
  std::vector<std::string> parts;  ///< as they were named
  bool all = false;                ///< every part of the reel
  std::string method;
  std::string material;  ///< empty: that of the parts
  std::string minutes;
  std::string what;             ///< in a sentence; empty: the method says it
  std::string caution;          ///< "Label: words"
  std::string against_warning;  ///< the reason, when it is done in spite of an objection
  std::string loss;             ///< finish that came away
  std::string way_back;         ///< "100: Fully."
  std::string agreed;           ///< the agreement that allows what a limit forbids
  AskCare care;
};

/// Adds a cleaning to the visit. What was untouched as found then counts as cleaned as left, when
/// the piece was examined as found and not yet as left. An objection of the care table without a
/// reason refuses.
[[nodiscard]] Change clean(CleanRequest request);

}  // namespace winchbook::daybook
