#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "base/edtf_date.h"
#include "record/record.h"

namespace winchbook::assess::dating {

/// What speaks of the date.
enum class Grounds {
  mark,       ///< a mark on the piece, by the bench's reading or by the bench's tables
  claim,      ///< a date that an owner or a repairer put on it: it can be cut later, or lie
  material,   ///< what the piece is made of
  finish,     ///< what it is finished with
  fastener,   ///< what kind of screw or rivet it is
  feature,    ///< a form of the maker's, by his file
  making,     ///< when the record says that this piece was made
  statement,  ///< a document or a person: the reel as a whole was there by then
};

/// Who set an end. Where the bench wrote what a mark says, its ends count, also one that it left
/// open: tables carry misprints, and a die may outlive its patent. The tables then only raise
/// doubts.
enum class Basis { bench, table };

/// One end of what a piece of evidence says. The day itself is within: an end "not before 1938" is
/// 1 January 1938, "not after 1956" is 31 December 1956.
struct End {
  base::Day day;
  record::EndFirmness firmness = record::EndFirmness::soft;
  Basis basis = Basis::bench;

  friend bool operator==(const End&, const End&) = default;
};

/// What one mark, material or statement says of the piece that bears it. An end that is not there
/// is one that nobody knows: unknown ("1948/") and open ("1948/..") bind alike, not at all.
struct Evidence {
  Grounds grounds = Grounds::mark;
  record::PieceId piece;  ///< empty: the reel as a whole
  std::optional<record::MarkingId> marking;
  std::optional<record::CustodyId> custody;
  std::string what;  ///< what was looked up: "acetal", "us-patent 2,185,170"; may be empty
  std::optional<End> not_before;
  std::optional<End> not_after;
  record::Legibility legibility = record::Legibility::clear;
  record::Certainty certainty = record::Certainty::certain;
  std::string because;  ///< the table's own reason; the bench's stands in the record
  std::string source;
};

}  // namespace winchbook::assess::dating
