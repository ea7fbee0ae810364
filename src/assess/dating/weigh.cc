#include <algorithm>
#include <array>
#include <map>
#include <utility>

#include "assess/dating/counting.h"
#include "assess/dating/dating.h"

namespace winchbook::assess::dating {
namespace {

using base::Day;
using record::EndFirmness;
using record::PieceId;

constexpr std::array kSides{Side::not_before, Side::not_after};
constexpr std::array kTiers{Tier::hard, Tier::custom, Tier::claim};

/// Soft ends that disagree by no more than this say nothing of the piece: a maker uses up his
/// stock. Our own setting.
constexpr std::int64_t kStockYears = 10;

const std::optional<End>& end_of(const Evidence& evidence, Side side) {
  return side == Side::not_before ? evidence.not_before : evidence.not_after;
}

EndUse& use_of(Use& use, Side side) {
  return side == Side::not_before ? use.not_before : use.not_after;
}

Tier tier_of(const Evidence& evidence, const End& end) {
  if (end.firmness == EndFirmness::hard) return Tier::hard;
  const bool told = evidence.grounds == Grounds::claim || evidence.grounds == Grounds::statement;
  return told ? Tier::claim : Tier::custom;
}

DaySpan span_of(const End& end, Side side) {
  return side == Side::not_before ? DaySpan{end.day, {}} : DaySpan{{}, end.day};
}

/// What the pieces say, taken together tier by tier.
class Weighing {
 public:
  Weighing(const record::Record& record, Finding& finding) : record_(record), finding_(finding) {}

  void weigh() {
    group_by_piece();
    for (std::size_t i = 0; i < finding_.evidence.size(); ++i)
      admit(i);
    describe_pieces();
    for (const Tier tier : kTiers) {
      if (unsettled_) {
        leave_undecided(tier);
      } else {
        weigh_tier(tier);
      }
    }
    set_window();
    finding_.attributed = std::none_of(
        finding_.evidence.begin(), finding_.evidence.end(), [&](const Evidence& evidence) {
          const Use& use = finding_.uses[position(evidence)];
          return evidence.marking && (use.not_before == EndUse::counts ||
                                      use.not_after == EndUse::counts || undecided(use));
        });
    doubt_what_was_written();
    reckon_profile();
  }

 private:
  std::size_t position(const Evidence& evidence) const {
    return static_cast<std::size_t>(&evidence - finding_.evidence.data());
  }

  static bool undecided(const Use& use) {
    return use.not_before == EndUse::undecided || use.not_after == EndUse::undecided;
  }

  void warn(Warning::Kind kind, std::size_t evidence, std::optional<Side> side = {}) {
    finding_.warnings.push_back({kind, evidence, side, {}});
  }

  /// Pieces that bear evidence, in the record's order; what speaks of the whole reel comes last.
  void group_by_piece() {
    std::map<PieceId, std::vector<std::size_t>> borne;
    for (std::size_t i = 0; i < finding_.evidence.size(); ++i)
      borne[finding_.evidence[i].piece].push_back(i);
    const auto add = [&](const PieceId& id) {
      const auto at = borne.find(id);
      if (at == borne.end()) return;
      PieceWindow piece;
      piece.piece = id;
      piece.left_out = left_out(record_, id);
      piece.evidence = std::move(at->second);
      finding_.pieces.push_back(std::move(piece));
      borne.erase(at);
    };
    for (const record::Piece& piece : record_.pieces)
      add(piece.id);
    add({});
  }

  /// Whether the evidence counts at all, before it is weighed against other evidence.
  void admit(std::size_t i) {
    const Evidence& evidence = finding_.evidence[i];
    Use& use = finding_.uses[i];
    if (evidence.not_before) use.not_before = EndUse::counts;
    if (evidence.not_after) use.not_after = EndUse::counts;
    if (!evidence.not_before && !evidence.not_after) return;
    if (evidence.legibility == record::Legibility::not_legible) {
      leave_out(i, LeftOut::not_legible);
    } else if (evidence.not_before && evidence.not_after &&
               evidence.not_after->day < evidence.not_before->day) {
      leave_out(i, LeftOut::crossed);
      warn(Warning::Kind::crossed_ends, i);
    }
  }

  void leave_out(std::size_t i, LeftOut reason) {
    Use& use = finding_.uses[i];
    use.left_out = reason;
    for (const Side side : kSides) {
      if (use.of(side) != EndUse::none) use_of(use, side) = EndUse::left_out;
    }
  }

  void describe_pieces() {
    const std::optional<Day> arrival =
        record_.visits.empty() ? std::nullopt : record_.visits.front().taken_in.latest();
    for (PieceWindow& piece : finding_.pieces) {
      for (const std::size_t i : piece.evidence) {
        if (finding_.uses[i].left_out != LeftOut::no) continue;
        for (const Side side : kSides) {
          const auto& end = end_of(finding_.evidence[i], side);
          if (!end) continue;
          piece.all = common(piece.all, span_of(*end, side));
          if (end->firmness == EndFirmness::hard)
            piece.hard = common(piece.hard, span_of(*end, side));
        }
        const auto& begins = finding_.evidence[i].not_before;
        if (piece.left_out != LeftOut::no) {
          leave_out(i, piece.left_out);
        } else if (begins && arrival && *arrival < begins->day) {
          leave_out(i, LeftOut::after_arrival);
          warn(Warning::Kind::after_arrival, i);
        }
      }
    }
  }

  /// The ends of one piece in one tier that count so far, taken together.
  std::optional<DaySpan> of_tier(const PieceWindow& piece, Tier tier) const {
    std::optional<DaySpan> all;
    each_end(piece, tier, [&](std::size_t i, Side side) {
      all = common(all.value_or(DaySpan{}), span_of(*end_of(finding_.evidence[i], side), side));
    });
    return all;
  }

  template <class Act> void each_end(const PieceWindow& piece, Tier tier, Act act) const {
    for (const std::size_t i : piece.evidence) {
      for (const Side side : kSides) {
        if (finding_.uses[i].of(side) != EndUse::counts) continue;
        const Evidence& evidence = finding_.evidence[i];
        if (tier_of(evidence, *end_of(evidence, side)) == tier) act(i, side);
      }
    }
  }

  void weigh_tier(Tier tier) {
    std::vector<std::size_t> of;
    std::vector<DaySpan> spans;
    for (std::size_t p = 0; p < finding_.pieces.size(); ++p) {
      give_way(finding_.pieces[p], tier);
      if (const auto span = of_tier(finding_.pieces[p], tier)) {
        of.push_back(p);
        spans.push_back(*span);
      }
    }
    const FewestDropped fewest = fewest_to_drop(spans, within_);
    if (fewest.count > 0) disagree(tier, fewest, of);
    take_steps(tier);
    within_ = fewest.hull;
  }

  /// A soft end that stronger ends exclude gives way.
  void give_way(const PieceWindow& piece, Tier tier) {
    if (tier == Tier::hard) return;
    std::vector<std::pair<std::size_t, Side>> giving;
    each_end(piece, tier, [&](std::size_t i, Side side) {
      const DaySpan span = span_of(*end_of(finding_.evidence[i], side), side);
      if (common(span, within_).empty()) giving.emplace_back(i, side);
    });
    for (const auto& [i, side] : giving) {
      use_of(finding_.uses[i], side) = EndUse::gives_way;
      warn(Warning::Kind::soft_gives_way, i, side);
    }
  }

  void disagree(Tier tier, const FewestDropped& fewest, const std::vector<std::size_t>& of) {
    Conflict conflict;
    conflict.tier = tier;
    conflict.pieces = fewest.count;
    conflict.alternatives_in_all = fewest.ways_in_all;
    std::map<std::size_t, std::size_t> dropped;  // how often each must go
    for (const WayOut& way : fewest.ways) {
      Alternative alternative;
      alternative.agreed = way.agreed;
      for (const std::size_t at : way.dropped) {
        alternative.must_go.push_back(finding_.pieces[of[at]].piece);
        ++dropped[of[at]];
      }
      conflict.alternatives.push_back(std::move(alternative));
    }
    const bool settled = fewest.ways_in_all == 1;
    const bool all_told = fewest.ways_in_all == fewest.ways.size();
    for (const auto& [p, times] : dropped) {
      const bool surely = all_told && times == fewest.ways.size();
      put_by(finding_.pieces[p], tier, fewest.ways.front().agreed, surely);
    }
    if (!settled) finding_.warnings.push_back({Warning::Kind::nothing_settles, {}, {}, {}});
    unsettled_ = !settled && tier == Tier::hard;
    finding_.conflicts.push_back(std::move(conflict));
  }

  /// A piece that must go, or that may have to: surely, or as one of several.
  void put_by(const PieceWindow& piece, Tier tier, const DaySpan& agreed, bool surely) {
    propose(piece, tier, agreed, surely);
    if (tier == Tier::hard && surely) {
      for (const std::size_t i : piece.evidence) {
        if (finding_.uses[i].left_out == LeftOut::no) leave_out(i, LeftOut::suspect);
      }
      return;
    }
    std::vector<std::pair<std::size_t, Side>> ends;
    each_end(piece, tier, [&](std::size_t i, Side side) {
      const DaySpan span = span_of(*end_of(finding_.evidence[i], side), side);
      if (!surely || common(span, agreed) != agreed) ends.emplace_back(i, side);
    });
    for (const auto& [i, side] : ends)
      use_of(finding_.uses[i], side) = surely ? EndUse::set_aside : EndUse::undecided;
  }

  void propose(const PieceWindow& piece, Tier tier, const DaySpan& agreed, bool surely) {
    const record::Piece* of_record = find(record_, piece.piece);
    if (of_record == nullptr || tier == Tier::claim) return;
    const DaySpan own = of_tier(piece, tier).value_or(DaySpan{});
    if (tier == Tier::custom && (!surely || own.empty() || years_apart(own, agreed) <= kStockYears))
      return;
    Suspect suspect{piece.piece, tier, !surely, {}, own, agreed, {}};
    suspect.already_open = of_record->of_this_reel.answer == record::OfThisReel::not_determined;
    each_end(piece, tier, [&](std::size_t i, Side side) {
      const DaySpan span = span_of(*end_of(finding_.evidence[i], side), side);
      const bool fits = !common(span, agreed).empty();
      const bool known = !suspect.evidence.empty() && suspect.evidence.back() == i;
      if ((!fits || own.empty()) && !known) suspect.evidence.push_back(i);
    });
    finding_.suspects.push_back(std::move(suspect));
  }

  static std::int64_t years_apart(const DaySpan& a, const DaySpan& b) {
    if (a.first && b.last && *b.last < *a.first) return a.first->year - b.last->year;
    if (b.first && a.last && *a.last < *b.first) return b.first->year - a.last->year;
    return 0;
  }

  void take_steps(Tier tier) {
    for (std::size_t i = 0; i < finding_.evidence.size(); ++i) {
      for (const Side side : kSides) {
        if (finding_.uses[i].of(side) != EndUse::counts) continue;
        const End& end = *end_of(finding_.evidence[i], side);
        if (tier_of(finding_.evidence[i], end) != tier) continue;
        const DaySpan narrower = common(stepped_, span_of(end, side));
        if (narrower == stepped_) continue;
        finding_.steps.push_back({i, side, tier, stepped_, narrower});
        stepped_ = narrower;
      }
    }
  }

  /// After a disagreement between hard ends that nothing settles, softer ones settle nothing.
  void leave_undecided(Tier tier) {
    for (const PieceWindow& piece : finding_.pieces) {
      std::vector<std::pair<std::size_t, Side>> ends;
      each_end(piece, tier, [&](std::size_t i, Side side) { ends.emplace_back(i, side); });
      for (const auto& [i, side] : ends)
        use_of(finding_.uses[i], side) = EndUse::undecided;
    }
  }

  /// The ends of the answer, each with the first and firmest evidence that sets it.
  void set_window() {
    for (const Side side : kSides) {
      const auto& day = side == Side::not_before ? within_.first : within_.last;
      if (!day) continue;
      std::optional<WindowEnd> set;
      for (std::size_t i = 0; i < finding_.evidence.size(); ++i) {
        const EndUse use = finding_.uses[i].of(side);
        const auto& end = end_of(finding_.evidence[i], side);
        if ((use != EndUse::counts && use != EndUse::undecided) || end->day != *day) continue;
        const bool firmer =
            set && set->firmness == EndFirmness::soft && end->firmness == EndFirmness::hard;
        if (!set || firmer) set = WindowEnd{*day, end->firmness, i};
      }
      (side == Side::not_before ? finding_.window.not_before : finding_.window.not_after) = set;
    }
  }

  void doubt_what_was_written() {
    const auto& made = record_.reel.made;
    if (!made) return;
    const DaySpan written{made->date.earliest(), made->date.latest()};
    if (common(written, within_).empty())
      finding_.warnings.push_back({Warning::Kind::written_outside, {}, {}, {}});
  }

  static int halving_of(const Evidence& evidence) {
    const bool doubtful = evidence.legibility == record::Legibility::in_part ||
                          evidence.legibility == record::Legibility::not_legible ||
                          evidence.certainty == record::Certainty::possible;
    return doubtful ? kDoubtfulHalving : kSoftHalving;
  }

  void reckon_profile() {
    if (unsettled_ || !finding_.window.not_before || !finding_.window.not_after) return;
    DaySpan hard;
    DaySpan reach;
    std::vector<SoftEnd> soft;
    for (std::size_t i = 0; i < finding_.evidence.size(); ++i) {
      for (const Side side : kSides) {
        const EndUse use = finding_.uses[i].of(side);
        if (use != EndUse::counts && use != EndUse::undecided) continue;
        const End& end = *end_of(finding_.evidence[i], side);
        if (end.firmness == EndFirmness::hard) {
          hard = common(hard, span_of(end, side));
          continue;
        }
        const int halving = halving_of(finding_.evidence[i]);
        const bool begins = side == Side::not_before;
        soft.push_back({begins, end.day.year, halving});
        const std::int64_t years = std::int64_t{halving} * kMostHalvings;
        reach = common(reach, begins ? DaySpan{Day{end.day.year - years, 1, 1}, {}}
                                     : DaySpan{{}, Day{end.day.year + years, 12, 31}});
      }
    }
    finding_.profile = year_profile(common(hard, reach), soft);
    if (finding_.profile.empty())
      finding_.warnings.push_back({Warning::Kind::too_wide, {}, {}, {}});
    finding_.range50 = shortest_range(finding_.profile, 0.5);
    finding_.range90 = shortest_range(finding_.profile, 0.9);
  }

  const record::Record& record_;
  Finding& finding_;
  DaySpan within_;   // what the tiers so far agree on
  DaySpan stepped_;  // the same, as far as the steps have come
  bool unsettled_ = false;
};

}  // namespace

DaySpan Window::days() const {
  DaySpan days;
  if (not_before) days.first = not_before->day;
  if (not_after) days.last = not_after->day;
  return days;
}

const Suspect* Finding::suspect(const record::PieceId& piece) const {
  const auto found = std::find_if(suspects.begin(), suspects.end(),
                                  [&](const Suspect& one) { return one.piece == piece; });
  return found == suspects.end() ? nullptr : &*found;
}

Finding weigh(const record::Record& record, std::vector<Evidence> evidence,
              std::vector<Warning> warnings) {
  Finding finding;
  finding.uses.resize(evidence.size());
  finding.evidence = std::move(evidence);
  finding.warnings = std::move(warnings);
  Weighing(record, finding).weigh();
  return finding;
}

}  // namespace winchbook::assess::dating
