#pragma once

#include <string>
#include <vector>

#include "record/record.h"

/// The tray: what came off the reel or lay loose, and where every one of it went.
namespace winchbook::assess::tray {

/// The account of one piece:
///   unaccounted = taken off + found loose
///               − refitted − bagged − to the owner − kept by the bench − lost − scrapped
/// Example: four screws taken off, three refitted, one lost: 4 − 3 − 1 = 0. Below 0: more went than
/// came, a fault of counting.
struct PieceAccount {
  record::PieceId piece;
  std::string name;
  record::TrayLine line;

  [[nodiscard]] int came() const { return line.taken_off + line.found_loose; }
  [[nodiscard]] int went() const;
  [[nodiscard]] int unaccounted() const { return came() - went(); }
  /// Lies on the bench still: what came and did not go.
  [[nodiscard]] bool open() const { return unaccounted() > 0; }
};

/// Whether a place is filled as the visit leaves it.
enum class Filled {
  filled,
  in_part,  ///< fewer than belong there
  empty,
};

/// The account of one place: what belongs there, and what sits there with the tray counted in: a
/// piece that is off and not refitted does not sit there.
struct PlaceAccount {
  record::PlaceId place;
  std::string name;
  int belongs = 1;  ///< pieces
  int sits = 0;
  bool may_be_empty = false;

  [[nodiscard]] Filled filled() const;
};

/// Both accounts of a visit, in the order of the tray and of the places.
struct Account {
  std::vector<PieceAccount> pieces;
  std::vector<PlaceAccount> places;

  /// Nothing is unaccounted for, either way.
  [[nodiscard]] bool closed() const;
};

[[nodiscard]] Account account(const record::Record& record, const record::Visit& visit);

/// So many of a piece that do not go back with the reel.
struct StaysAway {
  const record::Piece* piece = nullptr;
  record::Whereabouts::Kind kind = record::Whereabouts::Kind::lost;
  int count = 1;
};

/// What the bench kept, then what was scrapped, then what was lost, by the tray; a piece of which
/// no line of it tells, but that the visit found, by its own whereabouts.
[[nodiscard]] std::vector<StaysAway> stays_away(const record::Record& record,
                                                const record::Visit& visit);

}  // namespace winchbook::assess::tray
