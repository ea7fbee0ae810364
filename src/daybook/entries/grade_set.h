#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "daybook/entry.h"
#include "daybook/evidence.h"

namespace winchbook::daybook {

/// What is said of some parts, in phrases parted by commas:
///   original | not original | originality not known
///   the maker's | another maker's | bench made | owner made | maker not known
///   right pattern | running change | service spare | wrong pattern | pattern not known
///   certain | likely | possible        how sure, of the answers before it and after it
///   untouched 85 | worn through 15     any state of a surface; without a share, what is left to
///                                      100
///   fitted | loose | missing | not examined
///   corroded 0.5 | defects 2.5         shares of the area
///   material brass | finish nickel plate (the maker's)
/// or of a place: filled | in part | empty | not examined.
struct Grading {
  std::string typed;  ///< all phrases, as they are told
  std::optional<record::OfThisReel> of_this_reel;
  std::optional<record::MadeBy> made_by;
  std::optional<record::Pattern> pattern;
  std::optional<record::Certainty> certainty;
  std::optional<record::Presence> presence;
  std::vector<std::pair<record::SurfaceState, std::optional<base::Percent>>> surface;
  std::optional<base::Percent> corroded;
  std::optional<base::Percent> defects;
  std::string material;
  std::string finish;
  std::optional<record::Filled> filled;  ///< of a place

  [[nodiscard]] bool has_answer() const { return of_this_reel || made_by || pattern; }
  [[nodiscard]] bool has_state() const {
    return presence || !surface.empty() || corroded || defects;
  }
};

/// Adds the phrases to what was said before.
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, Grading& into);

/// What is set of what was found: of a flag, a place, all findings, a fault, or of parts; the first
/// of these that is named.
struct GradeRequest : Entry {
  std::vector<std::string> parts;  ///< as they were named
  Grading said;
  bool rest = false;  ///< every part that has no finding at this moment yet
  bool left = false;  ///< as left; else as found
  std::string by;     ///< who looked, or judged, as named
  /// What the answers rest on; without answers, the photographs are of the state or the fault.
  Evidence evidence;
  std::string note;  ///< on the state, or on the place

  std::optional<record::FaultKind> fault;
  bool no_fault = false;  ///< looked for faults, and found none
  std::string fault_name;
  std::optional<base::Millimetres> size;
  std::optional<record::Severity> found_severity;  ///< empty: not there
  std::optional<record::FaultLeft> left_severity;  ///< empty: nobody looked again
  std::string stays_because;

  std::optional<record::Flag::Kind> flag;
  bool no_flag = false;  ///< looked for hazards and legal traps, and found none
  std::string flag_name;
  std::string what;  ///< more of the fault or the flag

  std::string place;  ///< that no piece can speak for, as it was named
  std::string findings_note;
};

/// Sets what is named. Errors: nothing is, or nothing is said of it.
[[nodiscard]] base::Result<Said> grade_set(const GradeRequest& request, Draft& draft);

/// Sets the answers of the parts, and what was found of them.
[[nodiscard]] base::Result<Said> set_grade(const GradeRequest& request, Draft& draft);
/// Adds the fault, or sets what is given of one that has the name.
[[nodiscard]] base::Result<Said> add_fault(const GradeRequest& request, Draft& draft);
/// Sets how a place is.
[[nodiscard]] base::Result<Said> set_place_grade(const GradeRequest& request, Draft& draft);
/// Adds the flag, or sets what is given of one that has the name.
[[nodiscard]] base::Result<Said> add_flag(const GradeRequest& request, Draft& draft);

[[nodiscard]] forms::Job grade_set_job();

}  // namespace winchbook::daybook
