#pragma once

#include <string>
#include <vector>

#include "base/edtf_date.h"
#include "daybook/edit.h"

namespace winchbook::daybook {

/// A place of the reel; what is empty is not said.
struct PlaceRequest {
  std::string said;      ///< a place of the record as named, or the name of a new one
  std::string id;        ///< of a new one; empty: made from the name
  std::string kind;      ///< a word of the parts list; needed for a new one
  std::string assembly;  ///< "tail side"
  std::string quantity;
  std::string weight;  ///< in the index of originality
  std::string area;    ///< open to view, mm²
  bool consumable = false;
  bool may_be_empty = false;
  bool spring = false;  ///< a spring under load sits there
};

/// A part of the reel, or a thing that came with it: what it is, where it sits or is.
struct PartRequest {
  std::string name;    ///< of a new one; or, with `known`, a part as named
  std::string id;      ///< of a new one; empty: made from the name
  bool known = false;  ///< it is in the record; what is given is set
  bool empty = false;  ///< nothing sits there: the name is a place's
  PlaceRequest place;

  std::string count;
  std::string role;  ///< "content", "spare"
  std::string material;
  std::vector<std::string> finish;  ///< "nickel plate (maker, 1948): worn at the ends"
  std::string maker_name;
  std::string donor;
  std::string fragment_of;
  std::string made;  ///< EDTF
  std::string note;

  std::string fitted_by;            ///< "maker", "not-known", "bench", or a person as named
  std::string from;                 ///< EDTF: fitted from
  std::string until;                ///< EDTF: fitted until
  std::vector<std::string> photos;  ///< of it as fitted; needs a fitting
  std::string now;                  ///< whereabouts: "bagged"
  std::string bag;
  std::string since;
  std::string now_note;
};

/// Adds the part with its place and its fitting, or sets what is given of one that is known. What
/// was not born here and is put in by the bench is entered with fit (app/fit.h).
[[nodiscard]] Change part(PartRequest request);

}  // namespace winchbook::daybook
