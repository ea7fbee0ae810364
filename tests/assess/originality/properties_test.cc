// Properties over made-up reels. monotone, unknown, no average, permutation: the rows of the same
// names in the requirements for a grading scale (common practice), each held here by an index.

#include <doctest/doctest.h>

#include <numeric>

#include "assess/originality/originality.h"
#include "assess/reel_on_bench.h"

namespace winchbook::assess::originality {
namespace {

using base::Ratio;
using bench_test::ReelOnBench;

constexpr unsigned kReels = 1500;

Finding assess(const record::Record& record) {
  return originality::assess(record, record.visits.back(), bench_test::shipped().originality,
                             nullptr);
}

template <class Check> void on_every_reel(const Check& check) {
  for (unsigned seed = 1; seed <= kReels; ++seed) {
    CAPTURE(seed);
    const ReelOnBench reel = bench_test::any_reel(seed);
    check(reel.record, assess(reel.record), seed);
  }
}

void never_above(const Index& index) {
  if (!index.found || !index.left) return;
  CHECK(index.left->low <= index.found->low);
  CHECK(index.left->high <= index.found->high);
}

bool in_order(const base::RatioRange& range) {
  return Ratio() <= range.low && range.low <= range.high && range.high <= Ratio(1, 1);
}

void adds_up(const Index& index, const Change& change) {
  if (!index.found || !index.left) return;
  Ratio low;
  Ratio high;
  for (const Share& share : change.shares) {
    low = low + share.low;
    high = high + share.high;
  }
  CHECK(low == index.left->low - index.found->low);
  CHECK(high == index.left->high - index.found->high);
  for (const std::int64_t steps : {100, 1000, 10000}) {
    std::int64_t printed_low = 0;
    std::int64_t printed_high = 0;
    for (const PrintedShare& share : printed(index, change, steps)) {
      printed_low += share.low;
      printed_high += share.high;
    }
    CHECK(printed_low == index.left->low.rounded(steps) - index.found->low.rounded(steps));
    CHECK(printed_high == index.left->high.rounded(steps) - index.found->high.rounded(steps));
  }
}

bool same(const Index& a, const Index& b) {
  return a.found == b.found && a.left == b.left;
}

bool same(const Counts& a, const Counts& b) {
  return a.places_for == b.places_for && a.original == b.original && a.life == b.life &&
         a.not_determined == b.not_determined && a.missing == b.missing && a.other == b.other;
}

}  // namespace

TEST_CASE("bench work never raises what is original, nor its surface, in total or in a row") {
  int lowered = 0;
  on_every_reel([&](const record::Record&, const Finding& finding, unsigned) {
    never_above(finding.original);
    never_above(finding.untouched_surface);
    for (const PieceRow& row : finding.rows) {
      CHECK(row.left.original.low <= row.found.original.low);
      CHECK(row.left.original.high <= row.found.original.high);
      CHECK(row.left.surface_points.low <= row.found.surface_points.low);
      CHECK(row.left.surface_points.high <= row.found.surface_points.high);
    }
    if (finding.original.found && finding.original.left &&
        finding.original.left->low < finding.original.found->low) {
      ++lowered;
    }
  });
  CHECK(lowered > 100);  // the property is not held by nothing happening
}

TEST_CASE("every figure is a range within nothing and all, and the weights are one whole") {
  on_every_reel([](const record::Record&, const Finding& finding, unsigned) {
    for (const Index* index :
         {&finding.original, &finding.untouched_surface, &finding.right_for_model}) {
      if (index->found) CHECK(in_order(*index->found));
      if (index->left) CHECK(in_order(*index->left));
    }
    Ratio whole;
    int seats = 0;
    for (const PieceRow& row : finding.rows) {
      whole = whole + row.weight;
      seats += row.seats;
    }
    CHECK((whole == Ratio(1, 1) || whole == Ratio()));
    CHECK(finding.found.places_for == finding.found.original + finding.found.not_determined +
                                          finding.found.life + finding.found.missing +
                                          finding.found.other);
    CHECK(seats >= finding.found.places_for);
  });
}

TEST_CASE("the change is split over the rows without a rest") {
  int split = 0;
  on_every_reel([&](const record::Record&, const Finding& finding, unsigned) {
    adds_up(finding.original, finding.original_change);
    adds_up(finding.untouched_surface, finding.untouched_surface_change);
    adds_up(finding.right_for_model, finding.right_for_model_change);
    if (finding.untouched_surface_change.shares.size() > 2) ++split;
  });
  CHECK(split > 100);
}

TEST_CASE("permutation: the order in which things are entered changes no figure") {
  on_every_reel([](const record::Record& record, const Finding& finding, unsigned seed) {
    const Finding other = assess(bench_test::shuffled(record, seed + 99));
    CHECK(same(finding.original, other.original));
    CHECK(same(finding.untouched_surface, other.untouched_surface));
    CHECK(same(finding.right_for_model, other.right_for_model));
    CHECK(same(finding.found, other.found));
    CHECK(same(finding.left, other.left));
    CHECK(finding.way_back.original_restored == other.way_back.original_restored);
    CHECK(finding.way_back.untouched_surface_restored == other.way_back.untouched_surface_restored);
    CHECK(finding.way_back.fully == other.way_back.fully);
    CHECK(finding.assembled.size() == other.assembled.size());
  });
}

TEST_CASE("the way back never gives more than was found, nor less than is left") {
  on_every_reel([](const record::Record&, const Finding& finding, unsigned) {
    const auto between = [](const Index& index, const std::optional<base::RatioRange>& restored) {
      if (!restored) return;
      CHECK(index.left->low <= restored->low);
      CHECK(restored->low <= index.found->low);
      CHECK(index.left->high <= restored->high);
      CHECK(restored->high <= index.found->high);
      CHECK(restored->low <= restored->high);
    };
    between(finding.original, finding.way_back.original_restored);
    between(finding.untouched_surface, finding.way_back.untouched_surface_restored);
  });
}

TEST_CASE("monotone: better evidence never lowers the figure, worse never raises it") {
  on_every_reel([](const record::Record& record, const Finding& finding, unsigned seed) {
    bench_test::Dice dice(seed);
    record::Record better = record;
    record::Piece& piece = better.pieces.empty()
                               ? better.pieces.emplace_back()
                               : better.pieces[static_cast<std::size_t>(
                                     dice.below(static_cast<int>(better.pieces.size())))];
    const auto place_may_weigh_nothing =
        std::any_of(better.places.begin(), better.places.end(),
                    [](const record::Place& place) { return place.may_be_empty; });
    if (place_may_weigh_nothing) return;  // then the whole changes, and two wholes are compared
    piece.of_this_reel.answer = record::OfThisReel::yes;
    const Finding up = assess(better);
    if (finding.original.found && up.original.found) {
      CHECK(up.original.found->low >= finding.original.found->low);
      CHECK(up.original.found->high >= finding.original.found->high);
    }
    piece.of_this_reel.answer = record::OfThisReel::no;
    const Finding down = assess(better);
    if (finding.original.found && down.original.found) {
      CHECK(down.original.found->low <= finding.original.found->low);
      CHECK(down.original.found->high <= finding.original.found->high);
    }
  });
}

TEST_CASE("unknown: the range holds the figure however the open questions turn out") {
  int open = 0;
  on_every_reel([&](const record::Record& record, const Finding& finding, unsigned seed) {
    bench_test::Dice dice(seed);
    record::Record answered = record;
    for (record::Piece& piece : answered.pieces) {
      if (piece.of_this_reel.answer != record::OfThisReel::not_determined) continue;
      piece.of_this_reel.answer = dice.one_in(2) ? record::OfThisReel::yes : record::OfThisReel::no;
    }
    // A piece that the bench put in is not among the open questions of its place.
    for (const record::Fitting& fitting : record.fittings) {
      if (!fitting.visit) continue;
      for (std::size_t i = 0; i < answered.pieces.size(); ++i) {
        if (record.pieces[i].id == fitting.piece) answered.pieces[i] = record.pieces[i];
      }
    }
    const auto may_be_empty =
        std::any_of(record.places.begin(), record.places.end(),
                    [](const record::Place& place) { return place.may_be_empty; });
    if (may_be_empty) return;
    const Finding sure = assess(answered);
    const auto held = [](const std::optional<base::RatioRange>& range,
                         const std::optional<base::RatioRange>& figure) {
      if (!range || !figure) return;
      CHECK(range->low <= figure->low);
      CHECK(figure->high <= range->high);
    };
    held(finding.original.found, sure.original.found);
    held(finding.original.left, sure.original.left);
    if (finding.original.found && !finding.original.found->exact()) ++open;
  });
  CHECK(open > 300);
}

}  // namespace winchbook::assess::originality
