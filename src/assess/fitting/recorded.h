#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "assess/fitting/drag.h"
#include "assess/fitting/line.h"
#include "base/enum_words.h"
#include "knowledge/drag.h"
#include "record/record.h"

namespace winchbook::assess::fitting {

/// A measure without which a recorded drag is not reckoned.
enum class Lacking {
  stack,       ///< no stack was written down
  sizes,       ///< a washer that rubs has no inside or outside
  friction,    ///< the friction table does not know a material in this state
  setting,     ///< nobody pulled at the line
  gear_ratio,  ///< it slips at the gear, and the gear's ratio is not known
  spool,       ///< what is wound on, full and empty
};

[[nodiscard]] constexpr auto enum_words(Lacking /*list*/) {
  return std::to_array<base::EnumWord<Lacking>>({
      {Lacking::stack, "stack"},
      {Lacking::sizes, "sizes"},
      {Lacking::friction, "friction"},
      {Lacking::setting, "setting"},
      {Lacking::gear_ratio, "gear-ratio"},
      {Lacking::spool, "spool"},
  });
}

/// One washer of the recorded stack.
struct Member {
  record::PieceId piece;
  std::string name;
  std::string material;
  Turns turns = Turns::freely;
  std::optional<double> outside;  ///< mm
  std::optional<double> inside;
  std::optional<double> thickness;
};

/// Where something that turns with the gear rubs on something that turns with the sleeve.
struct RubbingFace {
  Ring ring;             ///< what both surfaces share
  std::string material;  ///< of the friction washer
  Span friction;
};

/// A drag as the record has it, reckoned from the pull that was measured, since nobody measures the
/// force under a star and everybody can pull at the line: the force along the axis
/// is that at which new washers, in the middle of their friction, slip at the setting with the
/// spool full,
///
///     F = setting · i · r_full / Σ (μ_middle · arm of uniform pressure)
///
/// and `finding` is what the same force gives with the friction low and high, new and worn in.
/// Example: 12 N, 4 : 1, 60 mm full, one face of 25 / 10 mm and μ 0.3 to 0.5: T = 12 · 4 · 0.030 =
/// 1.44 N·m, arm 9.2857 mm, F = 1.44 / (0.4 · 0.0092857) = 387.69 N.
struct RecordedDrag {
  std::vector<Member> stack;
  int faces = 0;
  std::vector<RubbingFace> rubbing;  ///< one for each face, when the sizes are known
  std::optional<bool> greased;       ///< empty: nobody wrote it
  double ratio = 1;
  std::optional<SpoolFill> spool;
  std::optional<double> setting;        ///< N at the line, spool full
  std::optional<Span> advised;          ///< N: from and to, as the bench advises
  std::vector<Lacking> lacking;         ///< empty: it was reckoned
  std::vector<std::string> unmeasured;  ///< names of what `sizes` or `friction` lack
  double force = 0;                     ///< N along the axis
  Span friction;                        ///< over all faces
  std::string friction_source;
  DragFinding finding;
  std::vector<Pull> curve;  ///< every twentieth of the fill, full first
  bool hazard = false;      ///< a washer of an asbestos-type material
};

/// Stars slip at the gear, and the line feels it through the gear's ratio; other brakes slip at the
/// spool. A washer without sizes of its own beside a friction washer leaves that one's ring as it
/// is. Of the two surfaces of a free washer the weaker slips.
[[nodiscard]] RecordedDrag recorded_drag(const record::Record& record, const record::Visit& visit,
                                         const knowledge::DragKnowledge& knowledge);

/// What the spool holds, and what a turn of the handle brings in.
struct RecordedLine {
  std::optional<LineLoad> holds;
  std::vector<LineLoad> others;    ///< up to three common diameters near it, the thinnest first
  std::optional<double> per_turn;  ///< mm, spool full, when gear and spool were measured
};

/// Whether the reel goes on the water or on a shelf, as the owner decided.
enum class Use {
  fish,
  shelf,      ///< it was decided so
  not_safe,   ///< whatever was decided, a fault that is left makes it unsafe
  undecided,  ///< nobody has decided, and nothing says that it may be fished
};

[[nodiscard]] constexpr auto enum_words(Use /*list*/) {
  return std::to_array<base::EnumWord<Use>>({
      {Use::fish, "fish"},
      {Use::shelf, "shelf"},
      {Use::not_safe, "not-safe"},
      {Use::undecided, "undecided"},
  });
}

/// An unsafe fault that is left comes first; then the course that was chosen, the one that the
/// bench advised, and whether the bench said how to fish it. A wish alone decides for the shelf,
/// never for the water.
[[nodiscard]] Use use_of(const record::Visit& visit);

/// Drag and line of a record, and what they are for.
struct Recorded {
  RecordedDrag drag;
  RecordedLine line;
  Use use = Use::undecided;
};

[[nodiscard]] Recorded recorded(const record::Record& record, const record::Visit& visit,
                                const knowledge::DragKnowledge& knowledge);

}  // namespace winchbook::assess::fitting
