#pragma once

#include <string>
#include <vector>

#include "base/edtf_date.h"
#include "daybook/edit.h"
#include "daybook/evidence.h"

namespace winchbook::daybook {

/// What is said of some parts, in phrases parted by commas:
///   born here | not born here | born here not known
///   the maker's | another maker's | bench made | owner made | maker not known
///   right pattern | running change | service spare | wrong pattern | pattern not known
///   certain | likely | possible        how sure, of the answers before it and after it
///   untouched 85 | worn through 15     any state of a surface; without a share, what is left to
///   100 fitted | loose | missing | not examined corroded 0.5 | defects 2.5         shares of the
///   area material brass | finish nickel plate (the maker's)
struct GradeRequest {
  base::Day on;
  std::vector<std::string> parts;  ///< as they were named
  bool rest = false;               ///< every part that has no finding at this moment yet
  std::vector<std::string> phrases;
  bool left = false;  ///< as left; else as found
  /// What the answers rest on; without answers, the photographs are of the state.
  Evidence evidence;
  std::string note;  ///< on the state
};

/// Sets the answers of the parts, and what was found of them.
[[nodiscard]] Change set_grade(GradeRequest request);

/// A named fault.
struct FaultRequest {
  base::Day on;
  std::string part;  ///< empty: the reel as a whole
  std::string kind;
  std::string name;
  std::string size;   ///< mm
  std::string found;  ///< how grave as found; empty: not there
  std::string left;   ///< as left; empty: put right
  std::string what;
  std::string why_it_stays;
  std::vector<std::string> photos;
};

/// Adds the fault, or sets what is given of one that has the name.
[[nodiscard]] Change add_fault(FaultRequest request);

/// What stands of a place that no piece can speak for: "filled", "in part", "empty" or "not
/// examined".
struct PlaceGradeRequest {
  base::Day on;
  std::string place;  ///< as named
  std::string filled;
  bool left = false;  ///< as left; else as found
  std::string note;
};

/// Sets it.
[[nodiscard]] Change set_place_grade(PlaceGradeRequest request);

/// A hazard or a legal trap.
struct FlagRequest {
  base::Day on;
  std::string kind;  ///< "hazard" or "legal"
  std::string name;
  std::string what;
  std::vector<std::string> parts;
};

/// Adds the flag, or sets what is given of one that has the name.
[[nodiscard]] Change add_flag(FlagRequest request);

/// Sets the note on the visit's findings.
[[nodiscard]] Change set_findings_note(base::Day on, std::string note);

}  // namespace winchbook::daybook
