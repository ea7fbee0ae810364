#pragma once

#include <array>
#include <optional>
#include <vector>

#include "assess/condition/condition.h"
#include "assess/originality/originality.h"
#include "base/enum_words.h"
#include "base/ratio.h"
#include "knowledge/courses.h"
#include "record/record.h"

/// Fish it or keep it: what can be said for each course, by what its owner ranks. It advises; the
/// owner decides.
namespace winchbook::assess::advice {

constexpr int kCourses = 4;
constexpr int kMatters = 6;
constexpr std::array<record::Course, kCourses> kAllCourses{
    record::Course::keep_as_found, record::Course::clean_for_show, record::Course::make_it_fish,
    record::Course::rebuild_to_fish};
constexpr std::array<record::Matter, kMatters> kAllMatters{
    record::Matter::memory, record::Matter::originality, record::Matter::value,
    record::Matter::use,    record::Matter::way_back,    record::Matter::cost};

/// What stands in the way of a course, or must be minded in it.
struct Stop {
  enum class Why {
    unsafe_fault,   ///< an unsafe fault is still there: it is not fished
    hazard,         ///< a hazard flag: no work that raises dust or heat before it is settled
    legal,          ///< a legal flag: ask before it is sold or sent abroad
    missing_piece,  ///< a place is empty as left: what belongs there could not be had
    must_stay,      ///< pieces that must stay would be replaced
  };
  Why why = Why::unsafe_fault;
  std::vector<record::Course> forbids;  ///< empty: it is only to be minded
  std::optional<record::FaultId> fault;
  std::optional<record::PlaceId> place;
  std::vector<record::PieceId> pieces;
  std::string name;  ///< of the flag, as written
};

[[nodiscard]] constexpr auto enum_words(Stop::Why /*list*/) {
  return std::to_array<base::EnumWord<Stop::Why>>({
      {Stop::Why::unsafe_fault, "unsafe-fault"},
      {Stop::Why::hazard, "hazard"},
      {Stop::Why::legal, "legal"},
      {Stop::Why::missing_piece, "missing-piece"},
      {Stop::Why::must_stay, "must-stay"},
  });
}

/// Where a score came from.
enum class ScoreFrom {
  bench,   ///< the bench's own points for the course, shared/advice/courses.xml
  index,   ///< original, as found or as left
  tests,   ///< the working axis, as found or as left
  costs,   ///< the record's costs of the courses
  sales,   ///< the values after each course
  undone,  ///< how far the fittings can be undone
  kept,    ///< how many of the pieces that must stay are still in the reel
};

[[nodiscard]] constexpr auto enum_words(ScoreFrom /*list*/) {
  return std::to_array<base::EnumWord<ScoreFrom>>({
      {ScoreFrom::bench, "bench"},
      {ScoreFrom::index, "index"},
      {ScoreFrom::tests, "tests"},
      {ScoreFrom::costs, "costs"},
      {ScoreFrom::sales, "sales"},
      {ScoreFrom::undone, "undone"},
      {ScoreFrom::kept, "kept"},
  });
}

struct Score {
  int points = 0;  ///< of a hundred
  ScoreFrom from = ScoreFrom::bench;
};

/// One course, scored.
struct Scored {
  record::Course course = record::Course::keep_as_found;
  std::array<Score, kMatters> scores;  ///< in the order of kAllMatters
  base::Ratio total;                   ///< Σ weight × points / 100, 0 to 1
  bool forbidden = false;
};

/// What would turn the answer over.
struct Flip {
  enum class Kind {
    swap,   ///< two places of the ranking exchanged
    cost,   ///< the answer costing so much more that the runner-up stands first
    value,  ///< the reel being worth so much less after the answer that the runner-up stands first
  };
  Kind kind = Kind::swap;
  record::Matter first = record::Matter::memory;  ///< the one that moves up
  record::Matter second = record::Matter::memory;
  record::Course then = record::Course::keep_as_found;  ///< what would be advised
  int points = 0;  ///< by how many the answer's score in cost or value would have to fall
  /// The same in money, where the costs of the courses are told: points × the dearest / 100.
  std::optional<base::Money> dearer_by;
};

[[nodiscard]] constexpr auto enum_words(Flip::Kind /*list*/) {
  return std::to_array<base::EnumWord<Flip::Kind>>({
      {Flip::Kind::swap, "swap"},
      {Flip::Kind::cost, "cost"},
      {Flip::Kind::value, "value"},
  });
}

/// What one matter does for the answer beside the runner-up.
struct Reason {
  record::Matter matter = record::Matter::memory;
  int points = 0;      ///< of the answer
  int other = 0;       ///< of the runner-up
  base::Ratio counts;  ///< weight × (points − other) / 100; below zero it speaks against it
};

struct Finding {
  std::vector<record::Matter> ranking;        ///< the most important first; may be short
  std::array<base::Ratio, kMatters> weights;  ///< in the order of kAllMatters; sum 1
  std::array<Scored, kCourses> courses;       ///< in the order of kAllCourses
  std::vector<Stop> stops;
  std::optional<record::Course> answer;  ///< empty: every course is forbidden
  std::optional<record::Course> runner_up;
  std::vector<Reason> reasons;  ///< by what they count for, those against the answer last
  std::vector<Flip> flips;      ///< the nearest swap, cost and value; none: nothing turns it
};

/// The rank-order-centroid weight of rank k (1 the most important) among n: (1/n) Σ_{i=k..n} 1/i,
/// exactly. Example: n = 4 gives 25/48, 13/48, 7/48, 1/16 (0.52, 0.27, 0.15, 0.06).
[[nodiscard]] base::Ratio centroid_weight(int rank, int n);

/// The weights of six matters by a ranking; those not ranked share what the remaining ranks hold.
[[nodiscard]] std::array<base::Ratio, kMatters> weights_of(
    const std::vector<record::Matter>& ranking);

/// What the scores are made from besides the bench's points.
struct Grounds {
  const record::Record& record;
  const record::Visit& visit;
  const originality::Finding& originality;
  const condition::Finding& condition;
  const knowledge::CourseScores& bench;
  /// Middle of the estimate after each course, in the order of kAllCourses; empty: no figure. The
  /// bench's points beside prices would decide by their scale: a course without a figure keeps them
  /// as they stand to those of keeping the reel as found.
  std::array<std::optional<double>, kCourses> values;
};

/// Stops first, then scores by the ranking. "Make it fish" is told as left when that is what was
/// chosen, since then the record knows what became of it.
[[nodiscard]] Finding advise(const Grounds& grounds, const std::vector<record::Matter>& ranking);

}  // namespace winchbook::assess::advice
