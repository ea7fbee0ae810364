#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/edtf_date.h"
#include "daybook/edit.h"

namespace winchbook::daybook {

/// A part put into the reel that was not born in it.
struct FitRequest {
  base::Day on;
  std::string id;      ///< of the part; empty: made from its name
  bool known = false;  ///< it is in the record, `name` as it is named: a spare, or one from a bag
  std::string name;    ///< "Pinion"
  std::string place;
  std::string instead_of;  ///< the old part; empty: the place was empty
  std::string material;
  int count = 1;

  std::string donor;  ///< what it came from: a donor of the record, or a new one
  bool same_maker = false;
  std::string
      made_by;  ///< "this-maker", "another", "bench", "owner"; empty: by donor, else not known
  std::string maker_name;
  std::string pattern;  ///< "right", "service-spare", …
  std::string certainty = "likely";
  std::string state;  ///< "new", "used" or "made"
  std::string cost;

  std::string why;
  std::string adaptation;
  bool reel_altered = false;         ///< something of the reel itself was cut, bored or bent
  std::string bore, outside, depth;  ///< of the seat, mm
  std::string seat_note;
  std::string way_back;  ///< "100: Fully. The old pinion drops straight in."

  std::string old_to = "bagged";  ///< whereabouts of the old part
  std::string bag;
  std::string agreed;  ///< the agreement that allows what a limit forbids
  std::string note;    ///< on the part
  std::vector<std::string> photos;
  std::vector<std::string> old_photos;  ///< of the old part
};

/// Adds the piece, its donor and its fitting, takes the old part out of its place and says where it
/// is. Errors: the old part never came off; it must stay; the reel is altered without an agreement.
[[nodiscard]] Change fit(FitRequest request);

}  // namespace winchbook::daybook
