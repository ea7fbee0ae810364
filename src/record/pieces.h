#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/decimal.h"
#include "base/edtf_date.h"
#include "record/judgement.h"

namespace winchbook::record {

/// Where something belongs in the reel.
struct Place {
  PlaceId id;
  std::string name;      ///< "Tail-plate screws"
  std::string kind;      ///< a word of the reel kind's parts list: "plate-screw"
  std::string assembly;  ///< "tail side", "drag"; empty when not grouped
  int quantity = 1;      ///< how many pieces sit here
  std::optional<base::Decimal>
      weight;                   ///< in the index of originality; empty: the parts list's weight
  bool consumable = false;      ///< washers, grease, line: weighs nothing
  bool may_be_empty = false;    ///< a place the maker left empty on some reels (a spare, an option)
  bool captive_spring = false;  ///< a spring under load sits here: warn before the step
  std::optional<base::SquareMillimetres>
      exposed_area;  ///< surface open to view, all its pieces together
};

/// Whose work a layer of finish is.
enum class FinishBy { maker, life, bench, other, not_determined };

/// One layer of finish, the lowest first: nickel over brass, a later chrome.
struct FinishLayer {
  std::string what;
  FinishBy by = FinishBy::not_determined;
  std::optional<base::EdtfDate> when;
  Words note;
};

enum class MadeBy { this_maker, another, bench, owner, not_determined };
enum class OfThisReel { yes, no, not_determined };
enum class Pattern { right, running_change, service_spare, wrong, not_determined };

/// What part a piece plays: in the reel, or with it.
enum class PieceRole {
  part,     ///< belongs in a place of the reel
  spare,    ///< a spare spool
  content,  ///< line, leader, box, papers, pouch, spanner
};

/// Where a piece is now (or what became of it).
struct Whereabouts {
  enum class Kind {
    fitted,
    bagged,
    to_owner,
    kept_by_bench,
    lost,
    scrapped,
    with_reel,  ///< a content or spare that travels with it
    not_known,
  };
  Kind kind = Kind::not_known;
  std::string bag;                   ///< "bag 3", when bagged
  std::optional<AgreementId> leave;  ///< the agreement that allows keeping or scrapping it
  std::optional<base::EdtfDate> since;
  Words note;
};

/// A reel (or a shop's stock) that gave pieces.
struct Donor {
  DonorId id;
  std::string name;  ///< "a broken Skerry No. 30, by the same maker"
  bool same_maker = false;
  Words note;  ///< where it came from, what is left of it
  std::optional<base::EdtfDate> acquired;
  std::optional<base::Money> cost;
};

/// Looked and found none, or looked and found some; without an entry, nothing is written.
enum class Looked { none, some };

/// What no eye can tell from what is harmless.
enum class Hazard {
  asbestos,
  lead,
  cadmium,
  mercury,
  celluloid,
  beryllium,
  radium,
  pesticides,
};

/// What a laboratory said of a piece.
struct LaboratoryReport {
  Hazard hazard = Hazard::asbestos;
  Looked found = Looked::none;
  std::string laboratory;  ///< its name
  base::EdtfDate on;       ///< the day of its report
  std::string number;      ///< the report's
};

/// One thing (or `count` like things that never part).
struct Piece {
  PieceId id;
  std::string name;
  int count = 1;
  PieceRole role = PieceRole::part;
  std::string material = "not determined";  ///< a word of the materials list: "brass"
  std::vector<FinishLayer> finish;          ///< lowest first; empty: bare
  Judgement<MadeBy> made_by;
  std::string maker_name;  ///< when another's: whose, if known
  Judgement<OfThisReel> of_this_reel;
  Judgement<Pattern> pattern;
  std::optional<DonorId> donor;        ///< the reel it came from, when not this one
  std::optional<PieceId> fragment_of;  ///< a broken-off part of that piece
  std::optional<base::EdtfDate> made;  ///< when this piece was made, if known apart
  std::optional<base::Grams> weight;
  std::string supplier;                  ///< it is new material: who supplied it
  std::vector<LaboratoryReport> tested;  ///< what no eye can tell
  Whereabouts now;
  Words note;
};

struct ByMaker {
  friend bool operator==(const ByMaker&, const ByMaker&) = default;
};
struct ByBench {
  friend bool operator==(const ByBench&, const ByBench&) = default;
};
struct ByNobodyKnown {
  friend bool operator==(const ByNobodyKnown&, const ByNobodyKnown&) = default;
};
using FittedBy = std::variant<ByNobodyKnown, ByMaker, ByBench, PersonId>;

/// How fully a fitting can be undone.
struct WayBack {
  base::Percent degree;  ///< 100: leaves no trace; 0: never
  Words words;           ///< "Fully. The old pinion drops straight in, and will jump again."
};

/// The seat as measured, each in millimetres; empty where it was not.
struct Seat {
  std::optional<base::Millimetres> bore;
  std::optional<base::Millimetres> outside;
  std::optional<base::Millimetres> depth;
  Words note;
};

/// Which piece was in which place, from when to when, and by whom.
struct Fitting {
  FittingId id;
  PieceId piece;
  PlaceId place;
  std::optional<base::EdtfDate>
      from;  ///< empty: not known; the maker's own fittings begin with the reel
  std::optional<base::EdtfDate> until;  ///< empty: it is there still
  FittedBy by;
  std::optional<VisitId> visit;       ///< the visit in which the bench fitted it
  std::optional<VisitId> removed_in;  ///< the visit in which the bench took it out for good
  Words why;
  Words adaptation;           ///< what was altered, on the piece or on the reel
  bool reel_altered = false;  ///< something of the reel itself was cut, bored or bent for it
  std::optional<Seat> seat;
  std::optional<WayBack> way_back;
  std::optional<PieceId> instead_of;  ///< the old piece; empty when there was none
  std::vector<PhotoId> photos;        ///< the new piece first
  std::vector<PhotoId> old_photos;    ///< the old piece
};

enum class MarkMethod {
  stamped,
  cast,
  moulded,
  engraved,
  transfer,
  paper,
  painted,
  etched,
  pencilled,
  other,
  not_determined,
};
enum class MarkOf { maker, retailer, owner, repairer, assembler, not_determined };
enum class MarkState { as_struck, recut, filed_off, worn, not_determined };
enum class Legibility { clear, in_part, not_legible, not_determined };

/// How firm an end of a mark's window is.
enum class EndFirmness {
  hard,  ///< law, physics, a printed date of issue
  soft,  ///< custom, stock used up, an engraved date
};

/// One end of what a mark says about the piece that bears it.
struct MarkEnd {
  base::EdtfDate date;
  EndFirmness firmness = EndFirmness::soft;
};

/// What the bench wrote a mark says: not before, not after, and why.
struct MarkSays {
  std::optional<MarkEnd> not_before;
  std::optional<MarkEnd> not_after;
  Words because;
  std::string source;
};

/// A mark on a piece.
struct Marking {
  MarkingId id;
  PieceId piece;
  std::string where;  ///< "underside", "inside the tail plate"
  MaybeText text;     ///< as read; lines are parted by "\n"; [ ] what is guessed
  MarkMethod method = MarkMethod::not_determined;
  MarkOf whose = MarkOf::not_determined;
  MarkState state = MarkState::not_determined;
  Legibility legibility = Legibility::not_determined;
  std::optional<PersonId> person;        ///< the person it names; withheld with that person
  std::optional<base::EdtfDate> claims;  ///< the date it claims
  std::optional<base::EdtfDate> cut;     ///< when it may have been cut
  std::optional<MarkSays> says;
  Words note;
  std::vector<PhotoId> photos;
  std::string salt;  ///< hexadecimal; empty when none was drawn
};

}  // namespace winchbook::record
