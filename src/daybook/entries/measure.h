#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/edtf_date.h"
#include "daybook/edit.h"

namespace winchbook::daybook {

/// Measures of the reel or of one part; all lengths in millimetres and weights in grams, as text.
struct MeasureRequest {
  base::Day on;        ///< needed for the drag, which is of a visit
  std::string what;    ///< "plate diameter"; with `length`
  std::string length;  ///< mm
  std::string weight;  ///< g; of the reel, or of `part`
  std::string part;
  std::string gear_ratio;
  std::string capacity;  ///< m of line
  std::string line;      ///< its diameter, mm
  std::string source = "measured";
  /// The drag as it was put together, from the gear outwards: "metal-eared: to-gear 7.4 23.6 0.9",
  /// the part, how it is held, and in mm its hole, outside and thickness.
  std::vector<std::string> washers;
  bool greased = false;       ///< with `washers`
  std::string setting;        ///< N at the line, the spool full
  std::string spool_full;     ///< mm across the wound line
  std::string spool_empty;    ///< mm across the core, or the last line on it
  std::string line_strength;  ///< N
};

/// Enters the measures; one that is there already is set anew.
[[nodiscard]] Change measure(MeasureRequest request);

}  // namespace winchbook::daybook
