#include "record/moments.h"

namespace winchbook::record {
namespace {

/// Whether the layer may already have been there when the reel came.
bool there_when_it_came(const FinishLayer& layer, const Visit& visit) {
  if (layer.by != FinishBy::bench) return true;
  return layer.when && surely_before(*layer.when, visit.taken_in);
}

/// Whether the layer may already have been there when the visit ended.
bool there_when_it_left(const FinishLayer& layer, const Visit& visit) {
  if (layer.by != FinishBy::bench || !layer.when || !visit.hand_back) return true;
  return !surely_before(visit.hand_back->on, *layer.when);
}

}  // namespace

const PieceState* state_of(const Visit& visit, const PieceId& piece, Moment moment) {
  for (const PieceFinding& finding : visit.findings.pieces) {
    if (finding.piece != piece) continue;
    const auto& state = moment == Moment::found ? finding.found : finding.left;
    return state ? &*state : nullptr;
  }
  return nullptr;
}

FinishBy uppermost_finish(const Piece& piece, const Visit& visit, Moment moment) {
  for (auto layer = piece.finish.rbegin(); layer != piece.finish.rend(); ++layer) {
    const bool there = moment == Moment::found ? there_when_it_came(*layer, visit)
                                               : there_when_it_left(*layer, visit);
    if (there) return layer->by;
  }
  return FinishBy::maker;
}

}  // namespace winchbook::record
