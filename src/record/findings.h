#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/decimal.h"
#include "base/edtf_date.h"
#include "record/pieces.h"

namespace winchbook::record {

/// What was done to, or became of, a stretch of surface.
enum class SurfaceState {
  untouched,
  cleaned,
  worn_through,
  polished,
  stripped,
  repaired,
  refinished,
  darkened_on_purpose,
};

/// How much of a piece's exposed area is in one state.
struct SurfaceShare {
  SurfaceState state = SurfaceState::untouched;
  base::Percent share;
};

enum class Presence {
  fitted,  ///< in its place
  loose,   ///< there, but out of its place
  missing,
  not_examined,
};

/// A piece at one moment. Shares that do not reach 100 leave the rest not determined.
struct PieceState {
  std::optional<base::EdtfDate> on;       ///< the day it was looked at
  std::optional<Presence> presence;       ///< empty: nobody wrote it
  std::vector<SurfaceShare> surface;      ///< empty: not examined
  std::optional<base::Percent> corroded;  ///< area where the base metal is attacked (protection)
  std::optional<base::Percent> appearance_defects;  ///< area with any visible defect (appearance)
  Words note;
  std::vector<PhotoId> photos;
};

/// A piece as found and as left. An absent half: not examined at that end of the visit.
struct PieceFinding {
  PieceId piece;
  std::optional<PieceState> found;
  std::optional<PieceState> left;
};

enum class Filled { yes, in_part, empty, not_examined };

/// A place as found and as left; needed where no piece can speak for it (a missing one).
struct PlaceFinding {
  PlaceId place;
  std::optional<base::EdtfDate> on;  ///< the day it was looked at
  std::optional<Filled> found;       ///< empty: nobody wrote it
  std::optional<Filled> left;
  Words note;
};

enum class FaultKind {
  crack,
  bend,
  pitting,
  crumbling_zinc,
  filed_foot,
  added_hole,
  stripped_thread,
  stripped_slot,
  grooved_roller,
  grooved_pawl,
  cracked_agate,
  worn_teeth,
  broken,
  worn_plating,
  fading,
  other,
};

enum class Severity { blemish, weakening, unsafe };

/// What somebody who looked at a fault again wrote of it as left.
enum class FaultLeft { blemish, weakening, unsafe, put_right };

/// A named fault; never averaged away.
struct Fault {
  FaultId id;
  std::optional<PieceId> piece;  ///< empty: the reel as a whole
  FaultKind kind = FaultKind::other;
  std::string name;  ///< "hairline crack at screw 4"
  std::optional<base::Millimetres> size;
  std::optional<base::EdtfDate> on;       ///< the day it was seen
  std::optional<base::EdtfDate> left_on;  ///< the day it was looked at again
  std::optional<Severity> found;          ///< empty: not there, or not seen, when it came
  /// Empty: nobody looked again, and it stands as it was found. How grave it is at either moment is
  /// asked of severity_at (record/moments.h).
  std::optional<FaultLeft> as_left;
  Words what;
  Words why_it_stays;  ///< for a fault that is left
  std::vector<PhotoId> photos;
};

enum class Verdict { as_made, with_care, in_part, not_working };

/// What a test gave: a reading in the test's unit, or words.
struct TestResult {
  enum class Kind { done, not_safe_to_test, not_tested };
  Kind kind = Kind::not_tested;
  std::optional<base::Decimal> reading;       ///< or the lower end of a range
  std::optional<base::Decimal> reading_high;  ///< the upper end of a range
  std::string words;                          ///< "silent", "slips at half a turn"
  std::optional<Verdict> verdict;
  std::optional<base::Newtons> load_limit;  ///< when not safe: never load it beyond this
  std::optional<base::EdtfDate> on;
};

/// The same test before and after. A result that says nothing (is_written, record/moments.h) was
/// not entered.
struct Test {
  std::string what;  ///< "Spool runs free after one measured flick"
  std::string unit;  ///< "s", "N", "mm"; empty: words only
  TestResult before;
  TestResult after;
  Words note;
};

/// A hazard or a legal trap seen on this reel.
struct Flag {
  enum class Kind { hazard, legal };
  Kind kind = Kind::hazard;
  std::optional<base::EdtfDate> on;  ///< the day it was entered
  std::string name;                  ///< "asbestos-type washers"
  Words what;                        ///< "none seen; no laboratory test"
  std::vector<PieceId> pieces;
};

/// What somebody may have looked for.
enum class LookedFor {
  marks,
  serial,  ///< a serial number
  faults,
  hazards,      ///< hazards and legal traps
  photographs,  ///< photographs that were taken
  contents,     ///< what came with it
  box,          ///< box and papers
  loose_parts,  ///< what lay loose in it
  life,         ///< events between the maker and this bench
  remaining,    ///< what could not be put right
  parted,       ///< pieces kept by the bench, scrapped or lost
};

/// Somebody looked for something.
struct Look {
  LookedFor what = LookedFor::marks;
  std::optional<base::EdtfDate> on;
  std::optional<PersonId> by;
  Looked found = Looked::none;
};

/// What was found in a visit, at its beginning and at its end.
struct Findings {
  std::optional<base::EdtfDate> found_on;
  std::optional<base::EdtfDate> left_on;
  std::optional<PersonId> by;
  std::vector<Look> looked_for;  ///< each thing once
  std::vector<PieceFinding> pieces;
  std::vector<PlaceFinding> places;
  std::vector<Fault> faults;
  std::vector<Test> tests;
  std::vector<Flag> flags;
  Words note;
};

}  // namespace winchbook::record
