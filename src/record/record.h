#pragma once

#include <optional>
#include <string>
#include <vector>

#include "record/people.h"
#include "record/photos.h"
#include "record/pieces.h"
#include "record/reel.h"
#include "record/value.h"
#include "record/visit.h"

namespace winchbook::record {

/// One reel's whole record, as it was read: immutable by use, no XML, no files.
/// Every id points at something that is here (the reader sees to it).
struct Record {
  int version = 1;
  std::string language;  ///< of the bench's own words: "en-GB"
  Bench bench;
  Reel reel;
  std::vector<Person> people;
  Custody custody;
  std::optional<Story> story;
  std::vector<LifeEvent> life;
  std::vector<Place> places;  ///< in the order of the ledger
  std::vector<Donor> donors;
  std::vector<Piece> pieces;
  std::vector<Fitting> fittings;
  std::vector<Marking> markings;
  std::vector<Visit> visits;  ///< earliest first
  std::vector<Photo> photos;
  std::optional<Value> value;
};

/// The thing an id points at, or null. Linear; a record holds hundreds, not millions.
[[nodiscard]] const Person* find(const Record& record, const PersonId& id);
[[nodiscard]] const Place* find(const Record& record, const PlaceId& id);
[[nodiscard]] const Piece* find(const Record& record, const PieceId& id);
[[nodiscard]] const Donor* find(const Record& record, const DonorId& id);
[[nodiscard]] const Fitting* find(const Record& record, const FittingId& id);
[[nodiscard]] const Marking* find(const Record& record, const MarkingId& id);
[[nodiscard]] const Visit* find(const Record& record, const VisitId& id);
[[nodiscard]] const Photo* find(const Record& record, const PhotoId& id);

/// At the arrival of a visit, or at its end.
enum class Moment { found, left };

/// The fittings in force in a place as the visit found it or left it, in record order.
/// Found: every fitting not begun in this visit or a later one and not ended before it.
/// Left: every fitting begun in this visit or before and not ended in or before it.
[[nodiscard]] std::vector<const Fitting*> fittings_in(const Record& record, const PlaceId& place,
                                                      const Visit& visit, Moment moment);

/// The last visit, or null when there is none.
[[nodiscard]] const Visit* last_visit(const Record& record);

/// The words as one plain string, people by the words of the mention or their full name; what is
/// withheld is told by the person's stand-in.
[[nodiscard]] std::string plain_text(const Record& record, const Words& words);

}  // namespace winchbook::record
