#include "daybook/named_parts.h"

#include <algorithm>
#include <utility>

#include "record/entered.h"

namespace winchbook::daybook {
namespace {

/// The name without the number behind its colon.
std::string without_count(const std::string& said) {
  return said.substr(0, said.rfind(':'));
}

/// The piece of a place of the list, added with its fitting.
record::PieceId fill_place(Draft& draft, const record::PlaceId& id) {
  record::Record& record = draft.record();
  const record::Place& place = *record::find(record, id);
  record::Piece piece;
  const std::string wish = id.text.starts_with("pl-") ? id.text.substr(3) : place.name;
  piece.id = {draft.free_id(wish)};
  piece.name = place.name;
  piece.count = place.quantity;
  piece.now.kind = record::Whereabouts::Kind::fitted;
  record::Fitting fitting;
  fitting.id = {draft.free_id("fi-" + piece.id.text)};
  fitting.piece = piece.id;
  fitting.place = id;
  record.pieces.push_back(piece);
  record.fittings.push_back(std::move(fitting));
  return piece.id;
}

/// Makes sure that what is named is a piece; false when it was a place of the list.
base::Result<bool> is_piece(Draft& draft, std::string_view said) {
  const auto part = record::find_part(draft.record(), said);
  if (!part) return part.faults();
  if (part->piece != nullptr) return true;
  fill_place(draft, part->place->id);
  return false;
}

/// Of a place that was only listed, as many belong there as are named.
void count_place(Draft& draft, const record::CountedPiece& counted) {
  if (counted.count <= counted.piece->count) return;
  to_change(draft.record().pieces, counted.piece).count = counted.count;
  const record::PlaceId place = draft.record().fittings.back().place;
  for (record::Place& one : draft.record().places) {
    if (one.id == place) one.quantity = counted.count;
  }
}

}  // namespace

record::PieceId piece_of(Draft& draft, const record::PlaceId& place) {
  for (const record::Fitting& one : draft.record().fittings) {
    if (one.place == place && !one.until) return one.piece;
  }
  return fill_place(draft, place);
}

void name_all_places(Draft& draft) {
  std::vector<record::PlaceId> places;
  for (const record::Place* place : record::places_without_piece(draft.record()))
    places.push_back(place->id);
  for (const record::PlaceId& place : places)
    fill_place(draft, place);
}

base::Result<const record::Piece*> piece_named(Draft& draft, std::string_view said) {
  const auto piece = is_piece(draft, said);
  if (!piece) return piece.faults();
  if (!*piece) return &draft.record().pieces.back();
  return record::find_piece(draft.record(), said);
}

base::Result<std::vector<const record::Piece*>> pieces_named(Draft& draft,
                                                             const std::vector<std::string>& said) {
  std::vector<record::PieceId> ids;
  base::Diagnostics faults;
  for (const std::string& one : said) {
    const auto piece = piece_named(draft, one);
    if (piece) {
      ids.push_back(piece.value()->id);
    } else {
      faults.insert(faults.end(), piece.faults().begin(), piece.faults().end());
    }
  }
  if (!faults.empty()) return faults;
  std::vector<const record::Piece*> pieces;
  for (const record::PieceId& id : ids) {
    const record::Piece* piece = record::find(draft.record(), id);
    if (std::find(pieces.begin(), pieces.end(), piece) == pieces.end()) pieces.push_back(piece);
  }
  return pieces;
}

base::Result<std::vector<record::CountedPiece>> counted_named(
    Draft& draft, const std::vector<std::string>& said) {
  base::Diagnostics faults;
  const auto add = [&](const base::Diagnostics& more) {
    faults.insert(faults.end(), more.begin(), more.end());
  };
  std::vector<std::pair<record::PieceId, int>> counted;
  for (const std::string& one : said) {
    const auto known = is_piece(draft, without_count(one));
    if (!known) {
      add(known.faults());
      continue;
    }
    const std::string name =
        *known ? one : draft.record().pieces.back().id.text + one.substr(without_count(one).size());
    const auto found = record::find_counted(draft.record(), {name});
    if (!found) {
      add(found.faults());
      continue;
    }
    if (!*known) count_place(draft, found->front());
    counted.emplace_back(found->front().piece->id, found->front().count);
  }
  if (!faults.empty()) return faults;
  std::vector<record::CountedPiece> pieces;
  pieces.reserve(counted.size());
  for (const auto& [id, count] : counted)
    pieces.push_back({record::find(draft.record(), id), count});
  return pieces;
}

}  // namespace winchbook::daybook
