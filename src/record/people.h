#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/edtf_date.h"
#include "record/judgement.h"
#include "record/words.h"

namespace winchbook::record {

/// The bench that keeps this record.
struct Bench {
  std::string name;                 ///< "The Lantern Bench"
  std::string place;                ///< "Carrick Sound"
  std::string address;              ///< as printed on a receipt; may hold line breaks
  std::string contact;              ///< telephone, letter or mail; empty when not given
  std::vector<PersonId> restorers;  ///< the first signs
  Words own_interest;  ///< the bench's own interest in the reel, if any: owns it, buys it, sold it
  Words terms;         ///< for goods that nobody collects, as the bench prints them on a receipt
};

/// The readers who may see a person's name and address.
enum class NamedTo {
  anyone,   ///< also a stranger's document
  insurer,  ///< the owner and the owner's insurer
  owner,    ///< the owner and family only
};

/// For whom a document, and the record that travels in it, is written.
enum class Reader { owner, insurer, stranger };

/// Whether the reader may see what is named to these.
[[nodiscard]] constexpr bool may_see(Reader reader, NamedTo named_to) {
  if (reader == Reader::owner || named_to == NamedTo::anyone) return true;
  return reader == Reader::insurer && named_to == NamedTo::insurer;
}

/// Somebody in the reel's life.
struct Person {
  PersonId id;
  MaybeText name;
  std::string short_name;  ///< "Gus"; empty when the full name is always used
  std::string stand_in;    ///< what is printed where the name is withheld: "the first owner"
  Words who;               ///< who they are to the reel: "purser of the Ellery Sound ferry"
  std::optional<MaybeText> address;
  std::optional<MaybeText> contact;
  std::optional<base::EdtfDate> lived;
  NamedTo named_to = NamedTo::owner;
  std::string salt;  ///< hexadecimal, drawn at intake; empty in an edition that withholds the name
};

/// Having the reel in hand and owning it are two things.
enum class Held { possession, title, both };

/// Somebody had it: from when to when, how it came, and how we know.
struct CustodyStep {
  CustodyId id;
  Held held = Held::both;  ///< or nobody wrote whether they owned it
  PersonId holder;
  std::optional<base::EdtfDate> from;   ///< empty: not known
  std::optional<base::EdtfDate> until;  ///< empty: they have it still; "1979/": nobody knows
  Words how;                            ///< bought new, left to her, lent, found in a tin
  std::string source;                   ///< receipt, letter, the owner's word
  std::optional<Certainty> certainty;
  std::vector<PhotoId> photos;
};

/// A stretch of which nobody knows who had it. It is said, never bridged.
struct CustodyGap {
  CustodyId id;
  std::optional<base::EdtfDate> from;
  std::optional<base::EdtfDate> until;
  Words what;  ///< what little is known
};

/// Earliest first.
using Custody = std::vector<std::variant<CustodyStep, CustodyGap>>;

/// What kind of thing happened in its life.
enum class LifeEventKind {
  repair,
  engraving,
  refinish,
  conversion,
  damage,
  loss,
  use,
  storage,
  other
};

/// Something that happened between the maker and this bench.
struct LifeEvent {
  LifeEventId id;
  LifeEventKind kind = LifeEventKind::other;
  std::string title;         ///< "The knob from the ferry's handrail"
  std::string date_as_told;  ///< "the August the landing was mended"
  std::optional<base::EdtfDate> date;
  std::optional<PersonId> by;
  Prose what;
  std::vector<PieceId> pieces;  ///< the pieces it left on the reel
  std::string source;
  std::optional<Certainty> certainty;
  Words keep_because;              ///< not empty: this must stay, and why
  std::vector<PieceId> must_stay;  ///< the pieces that must stay because of it
  std::vector<PhotoId> photos;
};

/// The story as its teller approved it.
struct Story {
  std::string title;  ///< empty: the document's own words
  Words answer;       ///< the one sentence that answers the chapter
  Prose paragraphs;
  std::optional<PersonId> told_by;
  std::optional<base::EdtfDate> approved_on;  ///< empty: not yet read and approved by the teller
};

}  // namespace winchbook::record
