#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "base/enum_words.h"
#include "base/ratio.h"
#include "knowledge/knowledge.h"
#include "record/record.h"

/// What is the maker's, and how much of it. Bench work never raises it: what was made at a bench or
/// came off a donor counts as not original whatever the record answers, and what is written better
/// as left than as found is held at found, with the reason.
namespace winchbook::assess::originality {

/// What sits in a place, seen from the maker's ledger.
enum class Standing {
  original,       ///< the maker's, of this reel
  same_maker,     ///< the maker's, from another reel
  service_spare,  ///< the maker's, sold as a spare
  life,           ///< made for it or put on it in its life, before this bench
  another_maker,  ///< another maker's
  bench,          ///< made at the bench
  missing,        ///< nothing is there
  left_empty,     ///< nothing is there and the maker left it so on some reels; weighs nothing
  not_determined,
};

[[nodiscard]] constexpr auto enum_words(Standing /*list*/) {
  return std::to_array<base::EnumWord<Standing>>({
      {Standing::original, "original"},
      {Standing::same_maker, "same-maker"},
      {Standing::service_spare, "service-spare"},
      {Standing::life, "life"},
      {Standing::another_maker, "another-maker"},
      {Standing::bench, "bench"},
      {Standing::missing, "missing"},
      {Standing::left_empty, "left-empty"},
      {Standing::not_determined, "not-determined"},
  });
}

/// Why a row counts as it does. The words for them are the reader's.
enum class Reason {
  record_of_this_reel,      ///< the record answers yes
  record_not_of_this_reel,  ///< the record answers no
  original_not_determined,  ///< the record leaves it open: from nothing to full
  made_at_bench,            ///< made at the bench: never original, whatever the record answers
  brought_by_bench,         ///< left open, but it came with the bench: not counted as original
  from_donor,               ///< came off a donor: never original, whatever the record answers
  place_empty,              ///< the place is empty
  place_not_examined,       ///< nobody says whether anything is there: from nothing to full
  piece_not_described,      ///< something is there that the record does not describe
  came_loose,        ///< came with the reel out of its place; put back, so it was there as found
  consumable,        ///< worn and replaced as a matter of course: weighs nothing
  weight_of_record,  ///< the weight is written in the record
  weight_of_parts_list,      ///< the weight is the parts list's
  weight_of_unknown_place,   ///< the parts list does not know the place's word
  surface_not_examined,      ///< no shares, or shares that do not reach 100
  surface_perhaps_anothers,  ///< not known to be the maker's: its surface may count anything
  loss_measured,             ///< finish came away in the cleaning
  finished_later,            ///< a later finish lies over the maker's: never reported as his
  held_at_found,             ///< written better as left than as found; held at what was found
  no_entry_changed_it,       ///< not graded as left: as found, changed by the acts entered
  found_at_least_as_left,    ///< not examined as found; at least what it was as left
};

/// A place's side of the story at one end of the visit.
struct Side {
  Standing standing = Standing::not_determined;
  std::optional<record::PieceId> piece;
  std::vector<record::SurfaceShare>
      surface;                   ///< as written; empty: not examined, or not the maker's
  bool makers_surface = false;   ///< false: a dash stands in the ledger
  bool surface_weighed = false;  ///< the surface is this reel's own and counts in the index
  /// Points of the of-this-reel index that this row brings, of Finding's whole.
  base::RatioRange original;
  base::RatioRange surface_points;
  base::RatioRange right_for_model;
  std::vector<Reason> reasons;  ///< why it counts so at this moment
};

/// One row of the first ledger: a place, or those of its seats that share one story.
struct PieceRow {
  int number = 1;  ///< from 1, in ledger order
  record::PlaceId place;
  std::string name;      ///< the place's; the piece's when the place has several rows
  std::string assembly;  ///< of the place
  int seats = 1;         ///< how many of the place's pieces this row is
  bool weighed = true;   ///< false: consumable, or left empty
  base::Ratio weight;    ///< share of the whole (all rows add up to one); 0 when not weighed
  Side found;
  Side left;
  bool changed = false;                  ///< another piece (or none) sits there as left
  std::vector<Reason> reasons;           ///< that hold at both moments, or for the difference
  record::Evidence evidence;             ///< of the answer "original" about the piece found
  std::vector<record::MarkingId> marks;  ///< on the piece found
  std::optional<std::string>
      letter;  ///< of the second ledger, when a fitting of this visit applies
  std::optional<record::FittingId> fitting;  ///< that fitting
};

/// One entry of the second ledger: a fitting by which the bench put in a piece that was not
/// original here.
struct Entry {
  std::string letter;  ///< "A" … "Z", "AA" …, in the record's order of fittings
  record::FittingId fitting;
};

/// An index, as found and as left. Empty: nothing to weigh.
struct Index {
  std::optional<base::RatioRange> found;
  std::optional<base::RatioRange> left;
};

/// What one row takes from (or adds to) an index, exactly; the shares add up to left minus found at
/// both ends of the range.
struct Share {
  int row = 0;  ///< PieceRow::number
  base::Ratio low;
  base::Ratio high;
};

/// A share in whole steps, so that the printed shares add up to the printed change.
struct PrintedShare {
  int row = 0;
  std::int64_t low = 0;
  std::int64_t high = 0;
};

/// The change of one index, row by row, without the rows that change nothing.
struct Change {
  std::vector<Share> shares;
};

/// Shares rounded to `steps` of a whole (100: points, 1000: tenths of a point, 10000: hundredths)
/// by largest remainder, in row order on ties. They add up to
/// left.rounded(steps) - found.rounded(steps) at each end.
[[nodiscard]] std::vector<PrintedShare> printed(const Index& index, const Change& change,
                                                std::int64_t steps);

/// A difference of two figures at the low and at the high end of their ranges.
struct Ends {
  base::Ratio at_low;
  base::Ratio at_high;

  friend bool operator==(const Ends&, const Ends&) = default;
};

/// The old piece of a fitting and whether it can go back.
struct Return {
  enum class Outcome {
    fully,           ///< goes back and leaves no trace
    in_part,         ///< goes back, the fitting leaves traces
    never,           ///< cannot be undone, or the piece is gone
    not_determined,  ///< the record does not say how far it can be undone
    nothing_there,   ///< the place was empty when it came: nothing to put back
  };
  enum class Because {
    at_hand,  ///< in a bag, with the owner, or with the reel
    kept_by_bench,
    lost,
    scrapped,
    whereabouts_not_known,
    degree_nought,
    was_missing,
  };
  int row = 0;
  std::optional<record::FittingId> fitting;  ///< empty: taken out and nothing put in
  std::optional<record::PieceId> old_piece;
  Outcome outcome = Outcome::not_determined;
  Because because = Because::at_hand;
  std::optional<base::Percent> degree;
  bool reel_altered = false;  ///< something of the reel itself was cut, bored or bent for it
  Ends original;              ///< what the return gives back to the index
  Ends untouched_surface;
};

/// A surface that the bench's work changed and that is not (wholly) to be had back.
struct SurfaceLoss {
  int row = 0;
  Ends lost;       ///< as found minus as left
  Ends recovered;  ///< what the written degree of way back gives
};

/// What can be restored of what was found.
struct WayBack {
  std::vector<Return> returns;  ///< one per changed seat and fitting, in row order
  std::vector<SurfaceLoss> surface_losses;
  int fully = 0;  ///< fittings by outcome
  int in_part = 0;
  int never = 0;
  int not_determined = 0;
  int nothing_there = 0;
  /// The indices with every piece at hand back in its place.
  std::optional<base::RatioRange> original_restored;
  std::optional<base::RatioRange> untouched_surface_restored;
};

/// No one reel gave enough of it to be called the reel.
struct Assembled {
  record::Moment when = record::Moment::found;
  int at_least_reels = 2;
  base::RatioRange largest_share;  ///< of the weight, by the reel that gave most
};

/// How many of the weighed and unweighed pieces are whose.
struct Counts {
  int places_for = 0;  ///< seats in all rows, those left empty by the maker not counted
  int original = 0;
  int not_determined = 0;
  int life = 0;
  int missing = 0;
  int other = 0;  ///< same maker's, service spares, another's, the bench's
};

/// Originality in one visit. All shares are exact; print them with Ratio::rounded.
struct Finding {
  record::VisitId visit;
  Index original;  ///< empty at a moment at which the reel is assembled from several
  Index untouched_surface;
  Index right_for_model;
  std::vector<PieceRow> rows;
  std::vector<Entry> second_ledger;
  Change original_change;
  Change untouched_surface_change;
  Change right_for_model_change;
  WayBack way_back;
  std::vector<Assembled> assembled;  ///< none, or one per moment at which it holds
  /// From at least how many reels it is put together, as found or as left; 1: as far as is known
  /// it is one reel. An index is reckoned all the same while one of them dominates.
  int reels = 1;
  Counts found;
  Counts left;
  /// Pieces that came out of their places and were not put back.
  std::vector<record::PieceId> loose_not_refitted;
  /// Places of the list about which nothing was entered: they are in no row and no count.
  std::vector<record::PlaceId> places_not_entered;
};

/// The fittings of `visit` that belong in the second ledger, lettered.
[[nodiscard]] std::vector<Entry> second_ledger(const record::Record& record,
                                               const record::Visit& visit);

/// Answers the three questions for every place of the record in one visit. `parts` is the list of
/// the reel's kind, or null.
[[nodiscard]] Finding assess(const record::Record& record, const record::Visit& visit,
                             const knowledge::OriginalityRules& rules,
                             const knowledge::PartsList* parts);

}  // namespace winchbook::assess::originality
