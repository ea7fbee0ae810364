#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/decimal.h"
#include "daybook/entry.h"
#include "record/pieces.h"

namespace winchbook::daybook {

/// A place of the reel; what is empty is not said.
struct PlaceRequest {
  std::string said;      ///< a place of the record as named, or the name of a new one
  std::string id;        ///< of a new one; empty: made from the name
  std::string kind;      ///< a word of the parts list; needed for a new one
  std::string assembly;  ///< "tail side"
  std::optional<int> quantity;
  std::optional<base::Decimal> weight;  ///< in the index of originality
  std::optional<base::SquareMillimetres> area;
  bool consumable = false;
  bool may_be_empty = false;
  bool spring = false;  ///< a spring under load sits there
};

/// A layer of finish: "nickel plate (maker, 1948): worn at the ends"; without brackets, nobody said
/// whose.
struct TypedFinish {
  std::string what;
  record::FinishBy by = record::FinishBy::not_determined;
  std::optional<base::EdtfDate> when;
  std::string note;
};
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, TypedFinish& into);

/// A part of the reel, or a thing that came with it: what it is, where it sits or is.
struct PartRequest : Entry {
  std::string name;    ///< of a new one; or, with `known`, a part as named
  std::string id;      ///< of a new one; empty: made from the name
  bool known = false;  ///< it is in the record; what is given is set
  bool empty = false;  ///< nothing sits there: the name is a place's
  PlaceRequest place;

  std::optional<int> count;
  std::optional<record::PieceRole> role;
  std::string material;
  std::vector<TypedFinish> finish;  ///< the lowest first
  std::string maker_name;
  std::string supplier;  ///< it is new material: who supplied it
  std::string donor;
  std::string fragment_of;
  std::optional<base::EdtfDate> made;
  std::string note;

  std::string fitted_by;                ///< "maker", "not-known", "bench", or a person as named
  std::optional<base::EdtfDate> from;   ///< fitted from
  std::optional<base::EdtfDate> until;  ///< fitted until
  std::vector<std::string> photos;      ///< of it as fitted; needs a fitting
  std::optional<record::Whereabouts::Kind> now;
  std::string bag;
  std::optional<base::EdtfDate> since;
  std::string now_note;
};

/// Adds the part with its place and its fitting, or sets what is given of one that is known. What
/// is not original and is put in by the bench is entered with fit (daybook/entries/fit.h).
[[nodiscard]] base::Result<Said> part(const PartRequest& request, Draft& draft);

[[nodiscard]] forms::Job part_job();

}  // namespace winchbook::daybook
