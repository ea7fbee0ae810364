#include "assess/originality/piece.h"

#include <algorithm>
#include <array>

#include "record/enum_words.h"
#include "record/moments.h"

namespace winchbook::assess::originality {
namespace {

using base::Ratio;
using base::RatioRange;

constexpr std::int64_t kAll = 10000;  // hundredths of a percent

bool was_in_its_life(const record::Record& record, const record::PieceId& piece) {
  return std::any_of(record.life.begin(), record.life.end(), [&](const record::LifeEvent& event) {
    return std::find(event.pieces.begin(), event.pieces.end(), piece) != event.pieces.end();
  });
}

/// Whether the piece came to this visit with the reel, in its place or loose.
bool came_with_reel(const record::Visit& visit, const record::PieceId& piece) {
  const record::PieceState* state = record::state_entered(visit, piece, record::Moment::found);
  return state != nullptr && record::is_there(*state);
}

bool brought_by_bench(const record::Record& record, const record::PieceId& piece) {
  return std::any_of(record.fittings.begin(), record.fittings.end(),
                     [&](const record::Fitting& fitting) {
                       if (fitting.piece != piece || !fitting.visit) return false;
                       const record::Visit* visit = find(record, *fitting.visit);
                       return visit != nullptr && !came_with_reel(*visit, piece);
                     });
}

/// Whether finish came away when the piece was cleaned, up to and with `visit` (its end) or before
/// it (its beginning).
bool loss_measured(const record::Record& record, const record::Visit& visit,
                   const record::PieceId& piece, record::Moment moment) {
  for (const record::Visit& one : record.visits) {
    const bool here = one.id == visit.id;
    if (here && moment == record::Moment::found) return false;
    for (const record::Cleaning& cleaning : one.cleaning) {
      const bool on_it =
          std::find(cleaning.pieces.begin(), cleaning.pieces.end(), piece) != cleaning.pieces.end();
      if (on_it && !cleaning.loss.empty()) return true;
    }
    if (here) return false;
  }
  return false;
}

RatioRange anything() {
  return {Ratio(0, 1), Ratio(1, 1)};
}

}  // namespace

std::int64_t hundredths(const base::Percent& percent) {
  std::int64_t units = percent.value.units();
  for (int places = percent.value.places(); places < 2; ++places) {
    units *= 10;
  }
  for (int places = percent.value.places(); places > 2; --places) {
    units /= 10;
  }
  return std::clamp<std::int64_t>(units, 0, kAll);
}

Originality of_this_reel(const record::Record& record, const record::Piece& piece) {
  using record::OfThisReel;
  if (piece.made_by.answer == record::MadeBy::bench) return {OfThisReel::no, Reason::made_at_bench};
  if (piece.donor) return {OfThisReel::no, Reason::from_donor};
  switch (piece.of_this_reel.answer) {
    case OfThisReel::yes:
      return {OfThisReel::yes, Reason::record_of_this_reel};
    case OfThisReel::no:
      return {OfThisReel::no, Reason::record_not_of_this_reel};
    case OfThisReel::not_determined:
      break;
  }
  if (brought_by_bench(record, piece.id)) return {OfThisReel::no, Reason::brought_by_bench};
  return {OfThisReel::not_determined, Reason::original_not_determined};
}

Standing standing(const record::Record& record, const record::Piece& piece,
                  record::OfThisReel original) {
  using record::MadeBy;
  if (original == record::OfThisReel::yes) return Standing::original;
  if (original == record::OfThisReel::not_determined) return Standing::not_determined;
  const MadeBy maker = piece.made_by.answer;
  if (maker == MadeBy::bench) return Standing::bench;
  if (maker == MadeBy::owner || was_in_its_life(record, piece.id)) return Standing::life;
  if (maker == MadeBy::another) return Standing::another_maker;
  const record::Donor* donor = piece.donor ? find(record, *piece.donor) : nullptr;
  if (maker == MadeBy::not_determined && (donor == nullptr || !donor->same_maker)) {
    return Standing::another_maker;
  }
  return piece.pattern.answer == record::Pattern::service_spare ? Standing::service_spare
                                                                : Standing::same_maker;
}

SurfaceCredit surface_credit(const record::Record& record, const record::Visit& visit,
                             const record::Piece& piece, record::Moment moment,
                             const knowledge::OriginalityRules& rules) {
  SurfaceCredit credit;
  const auto state = record::state_of(record, visit, piece.id, moment);
  std::int64_t examined = 0;
  std::int64_t kept = 0;  // hundredths of a percent × percent of credit
  const bool loss = loss_measured(record, visit, piece.id, moment);
  const record::FinishBy uppermost = record::uppermost_finish(piece, visit, moment);
  const bool finished_later =
      uppermost != record::FinishBy::maker && uppermost != record::FinishBy::not_determined;
  bool loss_counts = false;
  if (state && uppermost != record::FinishBy::not_determined) {
    for (const record::SurfaceShare& share : state->surface) {
      std::string_view counted_as = record::word_of(share.state);
      const bool clean = share.state == record::SurfaceState::untouched ||
                         share.state == record::SurfaceState::cleaned;
      if (finished_later) {
        counted_as = record::word_of(record::SurfaceState::refinished);
      } else if (clean && loss) {
        counted_as = "cleaned-with-loss";
        loss_counts = true;
      }
      examined += hundredths(share.share);
      kept += hundredths(share.share) * knowledge::credit(rules.surface, counted_as);
    }
  }
  if (finished_later) credit.reasons.push_back(Reason::finished_later);
  if (loss_counts) credit.reasons.push_back(Reason::loss_measured);
  if (examined > kAll) {  // more than the whole piece: nothing can be made of it
    examined = 0;
    kept = 0;
  }
  if (examined < kAll) credit.reasons.push_back(Reason::surface_not_examined);
  const std::int64_t open = (kAll - examined) * 100;
  credit.kept = {Ratio(kept, kAll * 100), Ratio(kept + open, kAll * 100)};
  return credit;
}

RatioRange pattern_credit(const record::Piece& piece, const knowledge::OriginalityRules& rules) {
  if (piece.pattern.answer == record::Pattern::not_determined) return anything();
  const Ratio counted(knowledge::credit(rules.pattern, record::word_of(piece.pattern.answer)), 100);
  return {counted, counted};
}

}  // namespace winchbook::assess::originality
