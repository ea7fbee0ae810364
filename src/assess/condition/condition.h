#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/ratio.h"
#include "knowledge/courses.h"
#include "knowledge/knowledge.h"
#include "record/record.h"

namespace winchbook::assess::condition {

using knowledge::kStateAxes;
using knowledge::StateAxis;

/// Words of an axis by number: 0 is the best ("over three quarters"), 3 the last ("a quarter or
/// less").
struct WordRange {
  int best = 0;
  int worst = 3;

  friend bool operator==(const WordRange&, const WordRange&) = default;
};

/// Where the marks stand on the axis line: 0 at the last word's end, 1 at the best word's end. The
/// words' boundaries lie at one, two and three quarters, whatever their thresholds.
using Position = base::RatioRange;

/// The four words: over three quarters, over half, over a quarter, a quarter or less.
struct SurfaceReading {
  WordRange word;
  Position position;
  std::optional<base::RatioRange> share;  ///< of the exposed area; empty: no area is known
};

/// Where the areas come from; never mixed.
enum class AreaBasis {
  measured,      ///< the record's exposed areas
  usual_shares,  ///< the parts list's
  none,
};

/// sound, marked, weakened, unsafe. The word is the gravest fault's; each fault of that gravity
/// moves the mark a sixth of the step, five sixths at most.
struct StructureReading {
  WordRange word;
  Position position;
  int unsafe = 0;  ///< named faults by gravity
  int weakening = 0;
  int blemish = 0;
  bool examined = true;  ///< false: the word is a range

  [[nodiscard]] int faults() const { return unsafe + weakening + blemish; }
};

/// as made, with care, in part, not. "with care": the mark falls from the step's upper end by the
/// share of the tests that went only with care. "in part": by the share of the tests that failed,
/// one in part counting half. A test not made, or not safe to make, leaves the axis open.
struct WorkingReading {
  WordRange word;
  Position position;
  int tests = 0;
  int as_made = 0;
  int with_care = 0;
  int in_part = 0;
  int not_working = 0;
  int not_safe_to_test = 0;
  int not_tested = 0;  ///< or done without a verdict
};

/// whole, nearly, part, little. A place counts as filled whoever made the piece.
struct CompletenessReading {
  WordRange word;
  Position position;
  std::optional<base::RatioRange> share;  ///< of the seats
  int seats = 0;
  int filled = 0;
  int empty = 0;
  int not_examined = 0;
  int loose = 0;  ///< of those filled: there, but out of their places
};

/// The four axes at one end of the visit. Nothing joins them.
struct Readings {
  SurfaceReading finish_left;
  StructureReading structure;
  WorkingReading working;
  CompletenessReading completeness;
};

/// Corrosion of a piece on the 10-to-0 table of ISO 10289:1999 and ASTM B537.
struct Corrosion {
  record::PieceId piece;
  std::optional<int> protection_found;
  std::optional<int> protection_left;
  std::optional<int> appearance_found;  ///< never above the protection of the same moment
  std::optional<int> appearance_left;
};

/// A surface that the bench or somebody before it made new, darkened or shiny: named beside the
/// axis.
struct Restored {
  record::PieceId piece;
  record::SurfaceState state = record::SurfaceState::refinished;
  bool found = false;
  bool left = false;
};

/// A place that is empty, named beside the axis.
struct Empty {
  record::PlaceId place;
  int found = 0;  ///< seats
  int left = 0;
};

/// Condition in one visit.
struct Finding {
  record::VisitId visit;
  Readings found;
  Readings left;
  AreaBasis area_basis = AreaBasis::none;
  std::vector<record::FaultId> faults_found;  ///< gravest first, then record order
  std::vector<record::FaultId> faults_left;
  std::vector<record::FaultId> put_right;
  std::vector<Restored> restored;
  std::vector<Empty> empty;
  std::vector<Corrosion> corrosion;
};

/// Grades the reel as found and as left in one visit. `parts` is the list of the reel's kind, or
/// null.
[[nodiscard]] Finding assess(const record::Record& record, const record::Visit& visit,
                             const knowledge::Knowledge& knowledge,
                             const knowledge::PartsList* parts);

/// Word number of a share by the axis's thresholds (0 best … 3).
[[nodiscard]] int word_of(const knowledge::ShareAxis& axis, base::Ratio share);
/// Where a share stands on the line: piecewise linear between thresholds, so that words are equal
/// steps.
[[nodiscard]] base::Ratio position_of(const knowledge::ShareAxis& axis, base::Ratio share);

}  // namespace winchbook::assess::condition
