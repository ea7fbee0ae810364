#include "assess/care/objections.h"

#include <algorithm>

namespace winchbook::assess::care {
namespace {

using record::PieceId;

/// Lies in the tray: more of it came off than went anywhere.
bool is_off(const record::Visit& visit, const PieceId& piece) {
  return std::any_of(visit.tray.begin(), visit.tray.end(), [&](const record::TrayLine& line) {
    return line.piece == piece &&
           line.taken_off + line.found_loose > line.refitted + line.bagged + line.to_owner +
                                                   line.kept_by_bench + line.lost + line.scrapped;
  });
}

/// The place in which a piece sits now, or null.
const record::Place* place_of(const record::Record& record, const PieceId& piece) {
  const record::Place* place = nullptr;
  for (const record::Fitting& fitting : record.fittings) {
    if (fitting.piece == piece && !fitting.until) place = find(record, fitting.place);
  }
  return place;
}

/// What is not apart from a piece: nothing when it is off; else itself, and what sits in the same
/// assembly, is not off and is not cleaned with it.
std::vector<PieceId> joined_to(const Question& asked, const record::Piece& piece) {
  if (piece.now.kind != record::Whereabouts::Kind::fitted || is_off(asked.visit, piece.id))
    return {};
  const record::Place* place = place_of(asked.record, piece.id);
  std::vector<PieceId> joined{piece.id};
  if (place == nullptr || place->assembly.empty()) return joined;
  for (const record::Piece& other : asked.record.pieces) {
    const bool cleaned =
        std::find(asked.pieces.begin(), asked.pieces.end(), &other) != asked.pieces.end();
    if (cleaned || other.now.kind != record::Whereabouts::Kind::fitted) continue;
    const record::Place* beside = place_of(asked.record, other.id);
    if (beside != nullptr && beside->assembly == place->assembly &&
        !is_off(asked.visit, other.id)) {
      joined.push_back(other.id);
    }
  }
  return joined;
}

bool says_the_same(const Judged& a, const Judged& b) {
  return a.because == b.because && a.verdict == b.verdict && a.method == b.method &&
         a.substance == b.substance && a.row == b.row && a.other == b.other;
}

}  // namespace

std::vector<Objection> objections(const knowledge::CareTable& table, const Question& asked) {
  std::vector<PieceId> together;
  for (const record::Piece* piece : asked.pieces)
    together.push_back(piece->id);
  std::vector<Objection> found;
  for (const record::Piece* piece : asked.pieces) {
    const auto judged =
        judge(table, asked.record, asked.visit,
              {*piece, asked.method, asked.minutes, joined_to(asked, *piece), together});
    for (const Judged& one : judged) {
      const auto known = std::find_if(found.begin(), found.end(), [&](const Objection& other) {
        return says_the_same(other.judged, one);
      });
      if (known == found.end()) {
        found.push_back({one, {piece}});
      } else {
        known->pieces.push_back(piece);
      }
    }
  }
  std::stable_sort(found.begin(), found.end(), [](const auto& a, const auto& b) {
    return a.judged.verdict > b.judged.verdict;
  });
  return found;
}

}  // namespace winchbook::assess::care
