#include "assess/dating/gather.h"

#include <algorithm>
#include <utility>

#include "assess/dating/tables.h"

namespace winchbook::assess::dating {
namespace {

using record::EndFirmness;
using record::Marking;
using record::MarkOf;

bool has_season(const base::EdtfDate& date) {
  const auto is_season = [](const base::EdtfEnd& end) {
    return end.point && end.point->precision == base::EdtfPoint::Precision::season;
  };
  const auto& members = date.members();
  return std::any_of(members.begin(), members.end(), [&](const base::EdtfMember& member) {
    return is_season(member.from) || is_season(member.to);
  });
}

/// The evidence as it grows, with its doubts.
class Gathering {
 public:
  Gathering(const record::Record& record, Gathered& out) : record_(record), out_(out) {}

  void add_marks() {
    for (const Marking& mark : record_.markings)
      add_mark(mark);
  }

  void add_pieces() {
    for (const record::Piece& piece : record_.pieces) {
      if (!piece.made) continue;
      Evidence evidence;
      evidence.grounds = Grounds::making;
      evidence.piece = piece.id;
      out_.evidence.push_back(std::move(evidence));
      set_ends(*piece.made, *piece.made, EndFirmness::soft);
    }
  }

  /// Whoever had it first, had it by then.
  void add_custody() {
    for (const auto& stretch : record_.custody) {
      const auto* step = std::get_if<record::CustodyStep>(&stretch);
      if (step == nullptr || !step->from) continue;
      Evidence evidence;
      evidence.grounds = Grounds::statement;
      evidence.custody = step->id;
      evidence.certainty = step->certainty.value_or(record::Certainty::likely);
      evidence.source = step->source;
      out_.evidence.push_back(std::move(evidence));
      set_end(Side::not_after, *step->from, EndFirmness::soft);
      return;
    }
  }

 private:
  void add_mark(const Marking& mark) {
    Evidence evidence;
    evidence.piece = mark.piece;
    evidence.marking = mark.id;
    evidence.legibility = mark.legibility;
    const bool of_maker = mark.whose == MarkOf::maker || mark.whose == MarkOf::assembler;
    if (mark.claims && !of_maker) evidence.grounds = Grounds::claim;
    if (mark.says) evidence.source = mark.says->source;
    out_.evidence.push_back(std::move(evidence));
    const bool says = mark.says && (mark.says->not_before || mark.says->not_after);
    if (says) {
      if (const auto& end = mark.says->not_before)
        set_end(Side::not_before, end->date, end->firmness);
      if (const auto& end = mark.says->not_after)
        set_end(Side::not_after, end->date, end->firmness);
    } else if (mark.claims && of_maker) {
      set_ends(*mark.claims, *mark.claims, EndFirmness::soft);
    } else if (mark.claims) {
      set_end(Side::not_after, *mark.claims,
              corroborated(mark) ? EndFirmness::hard : EndFirmness::soft);
    }
  }

  /// An engraved date is soft unless its cutting is recorded as certain by other means.
  bool corroborated(const Marking& mark) const {
    return std::any_of(
        record_.life.begin(), record_.life.end(), [&](const record::LifeEvent& event) {
          if (event.kind != record::LifeEventKind::engraving || !event.date) return false;
          if (event.certainty != record::Certainty::certain || event.source.empty()) return false;
          if (std::find(event.pieces.begin(), event.pieces.end(), mark.piece) == event.pieces.end())
            return false;
          const auto cut = event.date->latest();
          const auto claimed = mark.claims->latest();
          return cut && claimed && *cut <= *claimed;
        });
  }

  void set_ends(const base::EdtfDate& first, const base::EdtfDate& last, EndFirmness firmness) {
    set_end(Side::not_before, first, firmness);
    set_end(Side::not_after, last, firmness);
  }

  /// An end of the evidence added last. A hard end must be read clearly and dated surely.
  void set_end(Side side, const base::EdtfDate& date, EndFirmness firmness) {
    Evidence& evidence = out_.evidence.back();
    const auto day = side == Side::not_before ? date.earliest() : date.latest();
    if (!day) return warn(Warning::Kind::end_without_day, side);
    if (firmness == EndFirmness::hard) {
      if (evidence.legibility == record::Legibility::in_part) {
        firmness = EndFirmness::soft;
        warn(Warning::Kind::made_soft_in_part, side);
      } else if (date.uncertain() || date.approximate() || has_season(date)) {
        firmness = EndFirmness::soft;
        warn(Warning::Kind::made_soft_uncertain, side);
      }
    }
    (side == Side::not_before ? evidence.not_before : evidence.not_after) =
        End{*day, firmness, Basis::bench};
  }

  void warn(Warning::Kind kind, Side side) {
    out_.warnings.push_back({kind, out_.evidence.size() - 1, side, {}});
  }

  const record::Record& record_;
  Gathered& out_;
};

}  // namespace

Gathered gather(const record::Record& record, const knowledge::Knowledge& knowledge) {
  Gathered out;
  Gathering gathering(record, out);
  const Tables tables{knowledge.marks, knowledge.makers};
  gathering.add_marks();
  read_marks(record, tables, out);
  add_materials(record, tables, out);
  gathering.add_pieces();
  gathering.add_custody();
  return out;
}

Finding assess(const record::Record& record, const knowledge::Knowledge& knowledge) {
  Gathered gathered = gather(record, knowledge);
  return weigh(record, std::move(gathered.evidence), std::move(gathered.warnings));
}

}  // namespace winchbook::assess::dating
