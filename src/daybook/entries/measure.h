#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/decimal.h"
#include "daybook/entry.h"
#include "record/visit.h"

namespace winchbook::daybook {

/// The units in which a record holds what was measured of the reel.
enum class Unit { millimetres, metres, grams, newtons };

/// A figure above zero that was typed with its unit, in the unit of the record: "3 7/8 in" is
/// 98.425. Typed in that unit it keeps its places: 74.0.
template <Unit unit> struct Figure { base::Decimal value; };
[[nodiscard]] base::Diagnostics read_figure(std::string_view typed, Unit unit, base::Decimal& into);
template <Unit unit>
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, Figure<unit>& into) {
  return read_figure(typed, unit, into.value);
}

/// Turns of the spool for one of the handle, "3.5:1", or teeth, "60:14"; to three places.
struct TypedRatio {
  base::Decimal turns;
};
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, TypedRatio& into);

/// A washer: "metal-eared: to-gear 7.4 23.6 0.9", the part, how it is held, and in mm its hole,
/// outside and thickness.
struct TypedWasher {
  std::string part;         ///< as named
  record::DragWasher held;  ///< of a piece not found yet
};
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, TypedWasher& into);

/// Measures of the reel or of one part.
struct MeasureRequest : Entry {
  std::string what;  ///< "plate diameter"; with `length`
  std::optional<Figure<Unit::millimetres>> length;
  std::optional<Figure<Unit::grams>> weight;  ///< of the reel, or of `part`
  std::string part;
  std::optional<TypedRatio> gear_ratio;
  std::optional<Figure<Unit::metres>> capacity;   ///< of line
  std::optional<Figure<Unit::millimetres>> line;  ///< its diameter
  std::string source = "measured";
  std::vector<TypedWasher> washers;  ///< as it was put together, from the gear outwards
  bool greased = false;
  bool dry = false;                                      ///< with `washers`
  std::optional<Figure<Unit::newtons>> setting;          ///< at the line, the spool full
  std::optional<Figure<Unit::millimetres>> spool_full;   ///< across the wound line
  std::optional<Figure<Unit::millimetres>> spool_empty;  ///< across the core, or the last line
  std::optional<Figure<Unit::newtons>> line_strength;
};

/// Enters the measures; one that is there already is set anew.
[[nodiscard]] base::Result<Said> measure(const MeasureRequest& request, Draft& draft);

[[nodiscard]] forms::Job measure_job();

}  // namespace winchbook::daybook
