#pragma once

#include <optional>
#include <string>

#include "app/edit.h"

namespace winchbook::app {

/// Measures of the reel or of one part; all lengths in millimetres and weights in grams, as text.
struct MeasureRequest {
  std::string what;    ///< "plate diameter"; with `length`
  std::string length;  ///< mm
  std::string weight;  ///< g; of the reel, or of `part`
  std::string part;
  std::string gear_ratio;
  std::string capacity;  ///< m of line
  std::string line;      ///< its diameter, mm
  std::string source = "measured";
};

/// Enters the measures; one that is there already is set anew.
[[nodiscard]] Change measure(MeasureRequest request);

}  // namespace winchbook::app
