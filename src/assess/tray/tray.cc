#include "assess/tray/tray.h"

#include "record/entered.h"
#include "record/moments.h"

#include <algorithm>

namespace winchbook::assess::tray {
namespace {

using record::Piece;
using record::Place;
using record::Record;
using record::TrayLine;
using record::Visit;

/// How many of a piece are off the reel, by the tray.
int off(const Visit& visit, const record::PieceId& piece) {
  for (const TrayLine& line : visit.tray) {
    if (line.piece == piece) return std::max(0, line.taken_off - line.refitted);
  }
  return 0;
}

/// How many are in the reel of what a fitting says sits there: one found loose sits there once it
/// is refitted.
int sitting(const Record& record, const Visit& visit, const record::Fitting& fitting) {
  const Piece* piece = record::find(record, fitting.piece);
  const int count = piece == nullptr ? 1 : piece->count;
  return std::max(0, count - off(visit, fitting.piece));
}

/// Whether the visit found it in or with the reel.
bool was_found(const Visit& visit, const Piece& piece) {
  const auto& findings = visit.findings.pieces;
  return std::any_of(findings.begin(), findings.end(), [&](const record::PieceFinding& one) {
    return one.piece == piece.id && one.found && record::is_there(*one.found);
  });
}

}  // namespace

int PieceAccount::went() const {
  return line.refitted + line.bagged + line.to_owner + line.kept_by_bench + line.lost +
         line.scrapped;
}

Filled PlaceAccount::filled() const {
  if (sits == 0) return Filled::empty;
  return sits < belongs ? Filled::in_part : Filled::filled;
}

bool Account::closed() const {
  return std::all_of(pieces.begin(), pieces.end(),
                     [](const PieceAccount& one) { return one.unaccounted() == 0; });
}

Account account(const Record& record, const Visit& visit) {
  Account account;
  for (const TrayLine& line : visit.tray) {
    const Piece* piece = record::find(record, line.piece);
    account.pieces.push_back({line.piece, piece == nullptr ? line.piece.text : piece->name, line});
  }
  for (const Place& place : record.places) {
    if (!record::is_entered(record, place)) continue;
    PlaceAccount one{place.id, place.name, place.quantity, 0, place.may_be_empty};
    for (const record::Fitting* fitting :
         record::fittings_in(record, place.id, visit, record::Moment::left)) {
      one.sits += sitting(record, visit, *fitting);
    }
    account.places.push_back(std::move(one));
  }
  return account;
}

std::vector<StaysAway> stays_away(const Record& record, const Visit& visit) {
  using Kind = record::Whereabouts::Kind;
  struct Way {
    Kind kind;
    int TrayLine::*counted;
  };
  constexpr Way kWays[] = {{Kind::kept_by_bench, &TrayLine::kept_by_bench},
                           {Kind::scrapped, &TrayLine::scrapped},
                           {Kind::lost, &TrayLine::lost}};
  std::vector<StaysAway> away;
  for (const Way& way : kWays) {
    for (const Piece& piece : record.pieces) {
      int count = 0;
      for (const TrayLine& line : visit.tray) {
        if (line.piece == piece.id) count += line.*way.counted;
      }
      if (count == 0 && piece.now.kind == way.kind && was_found(visit, piece)) count = piece.count;
      if (count > 0) away.push_back({&piece, way.kind, count});
    }
  }
  return away;
}

}  // namespace winchbook::assess::tray
