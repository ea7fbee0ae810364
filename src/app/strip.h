#pragma once

#include <string>
#include <vector>

#include "app/edit.h"
#include "base/edtf_date.h"

namespace winchbook::app {

/// One step of taking the reel apart.
struct StripRequest {
  base::Day on;
  std::string what;  ///< in a sentence; or with `step`, nothing
  std::string step;  ///< a step that is written already (taken over from a like reel) and now done
  std::vector<std::string> off;  ///< what comes off, in order; "tail screws: 4"
  std::string orientation;
  std::string tool;
  bool spring = false;  ///< a spring comes free
  std::string caution;  ///< "Label: words"
  std::string
      spring_caution;  ///< what stands there when a spring comes free and no caution is given
  std::vector<std::string> photos;
};

/// Adds the step and puts what comes off into the tray. Warns of every spring that comes free.
/// Errors: a part that is off already, or that never sat in the reel.
[[nodiscard]] Change strip(StripRequest request);

/// The parts of a step that hold a spring under load, by their places: for the warning before it.
[[nodiscard]] std::vector<const record::Piece*> springs_in(
    const record::Record& record, const record::Visit& visit,
    const std::vector<const record::Piece*>& pieces);

}  // namespace winchbook::app
