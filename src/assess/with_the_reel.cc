#include "assess/with_the_reel.h"

#include <algorithm>
#include <variant>

namespace winchbook::assess {
namespace {

using record::Piece;
using record::Visit;

/// Gone before the visit began.
bool gone_before(const Piece& piece, const Visit& visit) {
  return !is_with_reel(piece) && piece.now.since &&
         base::surely_before(*piece.now.since, visit.taken_in);
}

/// What the bench itself put with it in the visit: it is in the work, and was never in the tray.
bool added_in(const Piece& piece, const Visit& visit) {
  const auto in_tray = [&](const record::TrayLine& line) { return line.piece == piece.id; };
  const auto in_work = [&](const record::Work& one) {
    return std::find(one.pieces.begin(), one.pieces.end(), piece.id) != one.pieces.end();
  };
  return piece.made_by.answer == record::MadeBy::bench ||
         (std::any_of(visit.work.begin(), visit.work.end(), in_work) &&
          std::none_of(visit.tray.begin(), visit.tray.end(), in_tray));
}

}  // namespace

bool is_with_reel(const Piece& piece) {
  using Kind = record::Whereabouts::Kind;
  return piece.now.kind != Kind::lost && piece.now.kind != Kind::scrapped &&
         piece.now.kind != Kind::kept_by_bench;
}

std::vector<const Piece*> came_with_it(const record::Record& record, const Visit& visit) {
  std::vector<const Piece*> out;
  for (const Piece& piece : record.pieces) {
    const bool part = piece.role == record::PieceRole::part;
    if (!part && !added_in(piece, visit) && !gone_before(piece, visit)) out.push_back(&piece);
  }
  return out;
}

std::optional<record::PersonId> owner_now(const record::Record& record) {
  std::optional<record::PersonId> owner;
  for (const auto& entry : record.custody) {
    const auto* step = std::get_if<record::CustodyStep>(&entry);
    if (step == nullptr || step->until || step->held == record::Held::possession) continue;
    owner = step->holder;
  }
  return owner;
}

std::optional<record::PersonId> owner_of(const record::Record& record, const record::Visit& visit) {
  return visit.owner ? visit.owner : owner_now(record);
}

std::optional<record::PersonId> client_of(const record::Record& record,
                                          const record::Visit& visit) {
  if (visit.hand_back && visit.hand_back->to) return visit.hand_back->to;
  const auto owner = owner_of(record, visit);
  return owner ? owner : visit.brought_by;
}

}  // namespace winchbook::assess
