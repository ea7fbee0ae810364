#pragma once

#include <optional>
#include <string>
#include <vector>

#include "daybook/entry.h"

namespace winchbook::daybook {

/// One step of taking the reel apart.
struct StripRequest : Entry {
  std::string what;  ///< in a sentence; or with `step`, nothing
  std::string step;  ///< a step that is written already (taken over from a like reel) and now done
  std::vector<std::string> off;    ///< what comes off, in order; "tail screws: 4"
  std::vector<std::string> found;  ///< what lay loose and is found in this step
  bool ask = false;                ///< only tell what flies, and write nothing
  std::string orientation;
  std::string tool;
  bool spring = false;  ///< a spring comes free
  std::optional<forms::Labelled> caution;
  std::vector<std::string> photos;
  bool springs_seen = false;  ///< somebody was told of what flies, and goes on
  bool done_already = false;  ///< in spite of a hazard (hazards.h)
};

/// Adds the step and puts what comes off into the tray. Warns of every spring that comes free (by
/// the record's own places and the parts list of its kind; alone, before somebody who can still
/// stop has seen it), of a part that must stay, and of the springs of the next step that is written
/// already, of what no eye can tell of what comes off. Errors: the step makes dust of that
/// (hazards.h); a part that is off already, or that never sat in the reel.
[[nodiscard]] base::Result<Said> strip(const StripRequest& request, Draft& draft);

[[nodiscard]] forms::Job strip_job();

}  // namespace winchbook::daybook
