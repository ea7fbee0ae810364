#include "assess/originality/assembled.h"

#include <algorithm>
#include <map>

#include "assess/originality/piece.h"

namespace winchbook::assess::originality {
namespace {

using base::Ratio;

/// Whose the weight is.
struct Origins {
  Ratio present;
  Ratio own;
  Ratio open;
  std::map<record::DonorId, Ratio> donors;
  bool donor_of_maker = false;
  bool donor_of_another = false;
  Ratio unnamed_of_maker;
  std::map<std::string, Ratio> unnamed_of_others;

  void add(const record::Record& record, const record::Piece& piece, Ratio weight) {
    present = present + weight;
    switch (of_this_reel(record, piece).answer) {
      case record::OfThisReel::yes:
        is_there_ = true;
        own = own + weight;
        return;
      case record::OfThisReel::not_determined:
        open = open + weight;
        return;
      case record::OfThisReel::no:
        break;
    }
    if (piece.donor) {
      const record::Donor* donor = find(record, *piece.donor);
      donors[*piece.donor] = donors[*piece.donor] + weight;
      const bool same = donor != nullptr && donor->same_maker;
      (same ? donor_of_maker : donor_of_another) = true;
      return;
    }
    // A spare, a bench's piece or one made for it in its life came off no reel.
    const Standing whose = standing(record, piece, record::OfThisReel::no);
    if (whose == Standing::same_maker) unnamed_of_maker = unnamed_of_maker + weight;
    if (whose == Standing::another_maker) {
      Ratio& theirs = unnamed_of_others[piece.maker_name];
      theirs = theirs + weight;
    }
  }

  [[nodiscard]] Ratio largest() const {
    Ratio most = own;
    for (const auto& [donor, weight] : donors) {
      most = std::max(most, weight);
    }
    return most;
  }

  /// Reels that certainly gave something.
  [[nodiscard]] int reels() const {
    int count = static_cast<int>(donors.size()) + (is_there_ ? 1 : 0);
    if (unnamed_of_maker > Ratio() && !donor_of_maker) ++count;
    if (!unnamed_of_others.empty() && !donor_of_another) ++count;
    return count;
  }

  /// Reels that certainly gave this share of what is there, or more.
  [[nodiscard]] int reels_giving(Ratio share) const {
    const Ratio enough = share * present;
    int count = own >= enough ? 1 : 0;
    const auto gave_enough = [&](const auto& one) { return one.second >= enough; };
    count += static_cast<int>(std::count_if(donors.begin(), donors.end(), gave_enough));
    if (unnamed_of_maker >= enough) ++count;
    count += static_cast<int>(
        std::count_if(unnamed_of_others.begin(), unnamed_of_others.end(), gave_enough));
    return count;
  }

 private:
  bool is_there_ = false;
};

Origins origins_of(const record::Record& record, const Finding& finding, record::Moment moment) {
  Origins origins;
  for (const PieceRow& row : finding.rows) {
    const Side& side = moment == record::Moment::found ? row.found : row.left;
    const record::Piece* piece = side.piece ? find(record, *side.piece) : nullptr;
    if (row.weight == Ratio() || side.standing == Standing::missing) continue;
    if (piece != nullptr) {
      origins.add(record, *piece, row.weight);
    } else {
      origins.present = origins.present + row.weight;
      origins.open = origins.open + row.weight;
    }
  }
  return origins;
}

}  // namespace

std::optional<Assembled> assembled(const record::Record& record, const Finding& finding,
                                   record::Moment moment,
                                   const knowledge::OriginalityRules& rules) {
  const Origins origins = origins_of(record, finding, moment);
  if (origins.present == Ratio() || origins.reels() < 2) return std::nullopt;
  const Ratio of_present(origins.present.whole(), origins.present.part());
  const Ratio low = origins.largest() * of_present;
  const Ratio high = (origins.largest() + origins.open) * of_present;
  if (high >= Ratio(rules.dominant_percent, 100)) return std::nullopt;
  return Assembled{moment, origins.reels(), {low, high}};
}

int reels_of_weight(const record::Record& record, const Finding& finding, record::Moment moment,
                    const knowledge::OriginalityRules& rules) {
  const Origins origins = origins_of(record, finding, moment);
  if (origins.present == Ratio()) return 1;
  return std::max(1, origins.reels_giving(Ratio(rules.another_percent, 100)));
}

}  // namespace winchbook::assess::originality
