#include "assess/dating/counting.h"

#include <algorithm>

namespace winchbook::assess::dating {

LeftOut left_out(const record::Record& record, const record::PieceId& id) {
  const record::Piece* piece = find(record, id);
  if (piece == nullptr) return LeftOut::no;
  if (piece->made_by.answer == record::MadeBy::bench) return LeftOut::made_at_bench;
  if (piece->donor) return LeftOut::from_donor;
  if (piece->role == record::PieceRole::content) return LeftOut::content;
  if (piece->of_this_reel.answer == record::OfThisReel::no) return LeftOut::not_of_this_reel;
  const bool by_bench = std::any_of(
      record.fittings.begin(), record.fittings.end(), [&](const record::Fitting& fitting) {
        return fitting.piece == id && std::holds_alternative<record::ByBench>(fitting.by);
      });
  // The bench puts back what it took off; what is original stays so.
  if (by_bench && piece->of_this_reel.answer != record::OfThisReel::yes)
    return LeftOut::put_in_by_bench;
  return LeftOut::no;
}

}  // namespace winchbook::assess::dating
