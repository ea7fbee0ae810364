#include "record/moments.h"

#include <algorithm>

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

/// The surface with what was untouched told as cleaned.
std::vector<SurfaceShare> cleaned(const std::vector<SurfaceShare>& found) {
  std::vector<SurfaceShare> surface;
  for (SurfaceShare share : found) {
    if (share.state == SurfaceState::untouched) share.state = SurfaceState::cleaned;
    const auto same = std::find_if(surface.begin(), surface.end(),
                                   [&](const auto& one) { return one.state == share.state; });
    if (same == surface.end()) {
      surface.push_back(share);
    } else {
      same->share.value = same->share.value + share.share.value;
    }
  }
  return surface;
}

bool was_cleaned(const Visit& visit, const PieceId& piece) {
  return std::any_of(visit.cleaning.begin(), visit.cleaning.end(), [&](const Cleaning& one) {
    return std::find(one.pieces.begin(), one.pieces.end(), piece) != one.pieces.end();
  });
}

bool was_put_back(const Visit& visit, const PieceId& piece) {
  return std::any_of(visit.tray.begin(), visit.tray.end(),
                     [&](const TrayLine& one) { return one.piece == piece && one.refitted > 0; });
}

bool was_taken_out(const Record& record, const Visit& visit, const PieceId& piece) {
  return std::any_of(record.fittings.begin(), record.fittings.end(), [&](const Fitting& one) {
    return one.piece == piece && one.removed_in == visit.id;
  });
}

}  // namespace

const PieceState* state_entered(const Visit& visit, const PieceId& piece, Moment moment) {
  for (const PieceFinding& finding : visit.findings.pieces) {
    if (finding.piece != piece) continue;
    const auto& state = moment == Moment::found ? finding.found : finding.left;
    return state ? &*state : nullptr;
  }
  return nullptr;
}

std::optional<PieceState> state_of(const Record& record, const Visit& visit, const PieceId& piece,
                                   Moment moment) {
  if (const PieceState* entered = state_entered(visit, piece, moment)) return *entered;
  const PieceState* found = state_entered(visit, piece, Moment::found);
  if (found == nullptr || moment == Moment::found || was_taken_out(record, visit, piece)) {
    return std::nullopt;
  }
  PieceState left;
  left.presence = found->presence;
  if (left.presence == Presence::loose && was_put_back(visit, piece)) {
    left.presence = Presence::fitted;
  }
  left.surface = was_cleaned(visit, piece) ? cleaned(found->surface) : found->surface;
  left.corroded = found->corroded;
  left.appearance_defects = found->appearance_defects;
  return left;
}

bool is_there(const PieceState& state) {
  const bool described = !state.surface.empty() || state.corroded || state.appearance_defects;
  return state.presence ? *state.presence == Presence::fitted || *state.presence == Presence::loose
                        : described;
}

std::optional<Severity> severity_at(const Fault& fault, Moment moment) {
  if (moment == Moment::found || !fault.as_left) return fault.found;
  switch (*fault.as_left) {
    case FaultLeft::blemish:
      return Severity::blemish;
    case FaultLeft::weakening:
      return Severity::weakening;
    case FaultLeft::unsafe:
      return Severity::unsafe;
    case FaultLeft::put_right:
      break;
  }
  return std::nullopt;
}

bool put_right(const Fault& fault) {
  return fault.as_left == FaultLeft::put_right;
}

bool is_written(const TestResult& result) {
  return result.kind != TestResult::Kind::not_tested || result.on || !result.words.empty();
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
