#pragma once

#include <optional>
#include <string>
#include <vector>

#include "daybook/entry.h"
#include "record/pieces.h"

namespace winchbook::daybook {

/// What a fitted part was before.
enum class PartState { fresh, used, made };

/// A part put into the reel that is not original.
struct FitRequest : Entry {
  std::string name;    ///< "Pinion"
  std::string id;      ///< of the part; empty: made from its name
  bool known = false;  ///< it is in the record, `name` as it is named: a spare, or one from a bag
  std::string place;
  std::string instead_of;  ///< the old part; empty: the place was empty
  std::string material;
  int count = 1;

  std::string supplier;  ///< it is new material: who supplied it
  std::optional<record::LaboratoryReport> tested;
  std::string donor;  ///< what it came from: a donor of the record, or a new one
  bool same_maker = false;
  std::optional<record::MadeBy> made_by;  ///< empty: by donor, else not known
  std::string maker_name;
  std::optional<record::Pattern> pattern;
  std::optional<record::Certainty> certainty;
  std::optional<PartState> state;
  std::optional<base::Money> cost;

  std::string why;
  std::string adaptation;
  bool reel_altered = false;  ///< something of the reel itself was cut, bored or bent
  std::optional<base::Millimetres> bore, outside, depth;  ///< of the seat
  std::string seat_note;
  std::optional<forms::Degree> way_back;

  /// Of the old part; empty: in the bag, when there is one, else not said, and it is looked for in
  /// the tray.
  std::optional<record::Whereabouts::Kind> old_to;
  std::string bag;
  std::string agreed;         ///< the agreement that allows what a limit forbids
  bool done_already = false;  ///< in spite of a hazard (hazards.h)
  std::string note;           ///< on the part
  std::vector<std::string> photos;
  std::vector<std::string> old_photos;  ///< of the old part
};

/// Adds the piece, its donor and its fitting, takes the old part out of its place and says where it
/// is. Errors: the adaptation makes dust of what no eye can tell (hazards.h); the old part never
/// came off; it must stay; the reel is altered without an agreement.
[[nodiscard]] base::Result<Said> fit(const FitRequest& request, Draft& draft);

[[nodiscard]] forms::Job fit_job();

}  // namespace winchbook::daybook
