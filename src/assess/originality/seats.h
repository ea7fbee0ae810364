#pragma once

#include <vector>

#include "assess/originality/originality.h"

namespace winchbook::assess::originality {

/// What sits in a seat at one moment.
struct Occupant {
  enum class Kind {
    piece,
    empty,          ///< the place was seen to be empty
    not_examined,   ///< nobody says
    not_described,  ///< something is there that the record does not describe
  };
  Kind kind = Kind::not_examined;
  const record::Piece* piece = nullptr;  ///< only for Kind::piece
};

/// Seats of one place that share one story.
struct SeatGroup {
  int seats = 1;
  Occupant found;
  Occupant left;
  const record::Fitting* fitting = nullptr;  ///< that brought the piece left, when it is another
  /// The piece left had come with the reel out of its place, and counts as found.
  bool came_loose = false;
};

/// The seats of a place in one visit. They add up to the place's quantity. The order of the record
/// changes nothing: what stays first, then what was changed for what, then the rest.
[[nodiscard]] std::vector<SeatGroup> seat_groups(const record::Record& record,
                                                 const record::Visit& visit,
                                                 const record::Place& place);

/// Whether the maker is known to have put a piece there on this reel, or may have.
[[nodiscard]] bool was_ever_filled(const record::Record& record, const record::PlaceId& place);

/// Weight of one seat, in the units of knowledge::units_per_seat.
struct SeatWeight {
  std::int64_t units = 0;
  Reason reason = Reason::weight_of_parts_list;
};

[[nodiscard]] SeatWeight seat_weight(const record::Place& place, const knowledge::PartsList* parts);

}  // namespace winchbook::assess::originality
