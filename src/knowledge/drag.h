#pragma once

#include <array>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/enum_words.h"
#include "base/result.h"
#include "knowledge/source.h"

namespace winchbook::knowledge {

/// What a drag washer's material is like under the knife.
enum class WasherSort {
  soft,    ///< may be trimmed
  hard,    ///< friction material that is not trimmed
  metal,   ///< keyed or a bearing face
  hazard,  ///< asbestos-type: not to be cut, sanded, brushed or blown
};

[[nodiscard]] constexpr auto enum_words(WasherSort /*list*/) {
  return std::to_array<base::EnumWord<WasherSort>>({
      {WasherSort::soft, "soft"},
      {WasherSort::hard, "hard"},
      {WasherSort::metal, "metal"},
      {WasherSort::hazard, "hazard"},
  });
}

/// Friction of a washer's material against steel or brass, as ranges: for the order of magnitude.
struct Friction {
  std::string material;           ///< "leather", "red fibre"
  std::vector<std::string> also;  ///< other names of it
  WasherSort sort = WasherSort::soft;
  std::optional<double> dry_low;
  std::optional<double> dry_high;
  std::optional<double> greased_low;
  std::optional<double> greased_high;
  std::string note;
  std::string source;  ///< where the figures were read, or "recalled"
};

/// Limits of one tolerance zone for one band of sizes, over `over` up to and with `up_to`, in
/// micrometres from the nominal size (ISO 286-2).
struct FitLimit {
  std::string zone;  ///< "H9", "d9"
  int over = 0;      ///< mm
  int up_to = 0;     ///< mm
  int upper = 0;     ///< µm
  int lower = 0;
};

/// The bench's rules for a seat, mm; each with its reason in the file.
struct SeatRules {
  double same_size = 0;     ///< room on the diameter that still is the same size
  double one_step = 0;      ///< one step of washer sizes
  double most_trim = 0;     ///< most that may come off a diameter
  double least_ring = 0;    ///< least width of ring that may be left
  double press_margin = 0;  ///< by how much the star must press beyond touching
  double flats_play = 0;    ///< most play across flats
};

/// A share of the line's strength that the trade sets a drag to, per hundred.
struct SettingShare {
  std::string when;  ///< "light line, straight pull"
  int low = 0;
  int high = 0;
  std::string source;
};

/// What the bench knows of drags and seats: `shared/drag/drag.xml`.
struct DragKnowledge {
  std::vector<Friction> friction;
  std::vector<FitLimit> fits;
  SeatRules seat;
  std::vector<SettingShare> settings;
};

/// The row of a material, by its name or another name of it, without regard to case; or null.
[[nodiscard]] const Friction* find_friction(const DragKnowledge& knowledge,
                                            std::string_view material);

/// The limits of a zone for a size in mm, or null when the table does not reach: "over 18 up to 30"
/// holds 30. The table governs; a formula differs from it by a micrometre.
[[nodiscard]] const FitLimit* find_limit(const DragKnowledge& knowledge, std::string_view zone,
                                         double size);

/// Reads `shared/drag/drag.xml`, validated by `schemas/knowledge-1.xsd`.
[[nodiscard]] base::Result<DragKnowledge> load_drag(const Source& source);

}  // namespace winchbook::knowledge
