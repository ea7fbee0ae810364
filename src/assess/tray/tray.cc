#include "assess/tray/tray.h"

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
    PlaceAccount one{place.id, place.name, place.quantity, 0, place.may_be_empty};
    for (const record::Fitting* fitting :
         record::fittings_in(record, place.id, visit, record::Moment::left)) {
      one.sits += sitting(record, visit, *fitting);
    }
    account.places.push_back(std::move(one));
  }
  return account;
}

}  // namespace winchbook::assess::tray
