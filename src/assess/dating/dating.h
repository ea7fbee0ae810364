#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "assess/dating/evidence.h"
#include "assess/dating/profile.h"
#include "assess/dating/span.h"
#include "base/enum_words.h"
#include "knowledge/knowledge.h"
#include "record/record.h"

namespace winchbook::assess::dating {

/// Which end.
enum class Side { not_before, not_after };

/// How strongly ends bind. Each tier is asked within what the stronger ones left: most ends are
/// soft, and a soft end never proves a piece wrong; an engraving on the right plate can lie. In
/// each the fewest pieces go. Pieces that hard ends exclude, or soft ends by over ten years, are
/// proposed to the first ledger; claims never are.
enum class Tier {
  hard,    ///< law, physics, a printed date of issue
  custom,  ///< soft ends of marks, materials, features
  claim,   ///< dates that somebody put on it or told: the weakest
};

/// Why a piece of evidence, or a whole piece, does not count.
enum class LeftOut {
  no,                ///< it counts
  not_of_this_reel,  ///< the record answers: not original
  made_at_bench,     ///< made at a bench, whatever the record answers
  put_in_by_bench,   ///< left open, but it came with the bench
  from_donor,        ///< came off a donor, whatever the record answers
  content,           ///< line, box, papers: not part of the reel
  not_legible,       ///< the mark cannot be read
  crossed,           ///< its own ends exclude each other
  after_arrival,     ///< it says a day on which the reel lay on the bench already
  suspect,           ///< its piece must go before any year fits the rest
};

[[nodiscard]] constexpr auto enum_words(LeftOut /*list*/) {
  return std::to_array<base::EnumWord<LeftOut>>({
      {LeftOut::no, "no"},
      {LeftOut::not_of_this_reel, "not-of-this-reel"},
      {LeftOut::made_at_bench, "made-at-bench"},
      {LeftOut::put_in_by_bench, "put-in-by-bench"},
      {LeftOut::from_donor, "from-donor"},
      {LeftOut::content, "content"},
      {LeftOut::not_legible, "not-legible"},
      {LeftOut::crossed, "crossed"},
      {LeftOut::after_arrival, "after-arrival"},
      {LeftOut::suspect, "suspect"},
  });
}

/// What became of one end of the evidence.
enum class EndUse {
  none,       ///< it has no such end
  counts,     ///< it holds of the answer
  gives_way,  ///< soft, and a stronger end says otherwise
  set_aside,  ///< soft, and set aside so that most pieces agree
  undecided,  ///< it holds in one way out of a disagreement and not in another
  left_out,   ///< its evidence is left out
};

/// How one piece of evidence was used.
struct Use {
  LeftOut left_out = LeftOut::no;
  EndUse not_before = EndUse::none;
  EndUse not_after = EndUse::none;

  [[nodiscard]] EndUse of(Side side) const {
    return side == Side::not_before ? not_before : not_after;
  }
};

/// One end of the answer, and the evidence that set it.
struct WindowEnd {
  base::Day day;
  record::EndFirmness firmness = record::EndFirmness::soft;
  std::size_t evidence = 0;
};

/// When it can have been made, both days within; an end that is not there is not known.
struct Window {
  std::optional<WindowEnd> not_before;
  std::optional<WindowEnd> not_after;

  [[nodiscard]] DaySpan days() const;
};

/// One step of the reasoning: this end narrowed the window.
struct Step {
  std::size_t evidence = 0;
  Side side = Side::not_before;
  Tier tier = Tier::hard;
  DaySpan before;
  DaySpan after;
};

/// One way to make the pieces agree.
struct Alternative {
  std::vector<record::PieceId> must_go;  ///< in the record's order; an empty id: what was told
  DaySpan agreed;                        ///< the days on which the others agree, in this tier
};

/// No day fits all pieces. One smallest set: it is the one that must go. Several: nothing says
/// which, and all are told.
struct Conflict {
  Tier tier = Tier::hard;
  std::size_t pieces = 0;  ///< how many must go at least
  std::vector<Alternative> alternatives;
  std::size_t alternatives_in_all = 0;
};

/// A piece that the first ledger should call *original: not determined*. The record is not
/// changed.
struct Suspect {
  record::PieceId piece;
  Tier tier = Tier::hard;
  bool one_of_several = false;        ///< it or another piece must go, nothing says which
  bool already_open = false;          ///< the record leaves the question open already
  DaySpan own;                        ///< what its own marks say
  DaySpan others;                     ///< what the others agree on
  std::vector<std::size_t> evidence;  ///< the evidence on it that does not fit
};

/// Doubts that are told beside the answer.
struct Warning {
  enum class Kind {
    crossed_ends,         ///< a mark's ends exclude each other: left out
    made_soft_in_part,    ///< a hard end, but the mark is read only in part: taken as soft
    made_soft_uncertain,  ///< a hard end, but its date is "about", "perhaps" or a season
    end_without_day,      ///< an end whose date has no day on that side ("../1940")
    bench_against_table,  ///< the bench's end lies outside what the table allows; the bench's
                          ///< counts
    after_arrival,        ///< it says a day on which the reel lay on the bench already: left out
    soft_gives_way,       ///< a soft end, and stronger ends say otherwise
    written_outside,      ///< the year that the bench wrote for the reel lies outside the window
    nothing_settles,      ///< several smallest sets: one must be chosen before a year can be told
    too_wide,             ///< too many years for a profile
    table,                ///< what the table says of the mark, in its own words
  };
  Kind kind = Kind::crossed_ends;
  std::optional<std::size_t> evidence;
  std::optional<Side> side;
  std::string words;  ///< of the table
};

/// What the marks, the material and the rest say of one piece by itself.
struct PieceWindow {
  record::PieceId piece;  ///< empty: the reel as a whole
  LeftOut left_out = LeftOut::no;
  DaySpan hard;
  DaySpan all;  ///< hard and soft; empty() when its own ends exclude each other
  std::vector<std::size_t> evidence;
};

/// When it was made, with reasons and doubts. Positions are those of `evidence`.
struct Finding {
  std::vector<Evidence> evidence;   ///< in the record's order
  std::vector<Use> uses;            ///< of each piece of evidence
  std::vector<PieceWindow> pieces;  ///< those that bear evidence, in the record's order
  /// The answer. Where several ways out of a disagreement are left, it holds them all.
  Window window;
  bool attributed = false;  ///< no mark counts: materials, fasteners and what was told alone
  std::vector<Step> steps;  ///< hard ends first, then custom, then claims
  std::vector<Conflict> conflicts;  ///< at most one a tier
  std::vector<Suspect> suspects;
  std::vector<Warning> warnings;
  YearProfile profile;  ///< empty when an end is not known, or a disagreement is not settled
  std::optional<YearRange> range50;  ///< the shortest run of years that holds half
  std::optional<YearRange> range90;  ///< and nine tenths

  /// Null when nothing proposes to leave it open.
  [[nodiscard]] const Suspect* suspect(const record::PieceId& piece) const;
};

/// Weighs evidence about the pieces of a record. Days are days of the proleptic Gregorian calendar;
/// a window holds both its ends. `warnings` are those of gathering and stand first.
[[nodiscard]] Finding weigh(const record::Record& record, std::vector<Evidence> evidence,
                            std::vector<Warning> warnings = {});

/// Gathers what the record and the tables say of the date, and weighs it.
[[nodiscard]] Finding assess(const record::Record& record, const knowledge::Knowledge& knowledge);

}  // namespace winchbook::assess::dating
