#pragma once

#include <optional>
#include <string>
#include <vector>

#include "daybook/entry.h"

namespace winchbook::daybook {

/// How some parts were cleaned.
struct CleanRequest : Entry {
  std::vector<std::string> parts;  ///< as they were named
  bool all = false;                ///< every part of the reel
  std::string method;
  std::string material;  ///< empty: not written
  std::optional<base::Minutes> minutes;
  std::string what;  ///< in a sentence; empty: the method says it
  std::optional<forms::Labelled> caution;
  std::string against_warning;  ///< the reason, when it is done in spite of an objection
  std::string loss;             ///< finish that came away
  std::optional<forms::Degree> way_back;
  std::string agreed;         ///< the agreement that allows what a limit forbids
  bool done_already = false;  ///< in spite of a hazard (hazards.h)
};

/// Adds a cleaning to the visit. An objection of the care table without a
/// reason refuses.
[[nodiscard]] base::Result<Said> clean(const CleanRequest& request, Draft& draft);

[[nodiscard]] forms::Job clean_job();

}  // namespace winchbook::daybook
