#include "assess/assessment.h"

#include <doctest/doctest.h>

#include "assess/reel_on_bench.h"

namespace winchbook::assess {

TEST_CASE("every visit is answered, and the last one is told") {
  bench_test::ReelOnBench reel;
  reel.visit().id = {"first"};
  record::Visit second;
  second.id = {"second"};
  second.taken_in = bench_test::date("2030-01-01");
  reel.record.visits.push_back(second);
  const Assessment assessment = assess(reel.record, bench_test::shipped());
  REQUIRE(assessment.visits.size() == 2);
  CHECK(assessment.visits[0].visit.text == "first");
  CHECK(assessment.last()->visit.text == "second");
  CHECK(assessment.last()->originality.visit.text == "second");
  CHECK(assessment.last()->condition.visit.text == "second");
}

TEST_CASE("a record that was never at the bench has no answers") {
  bench_test::ReelOnBench reel;
  reel.record.visits.clear();
  CHECK(assess(reel.record, bench_test::shipped()).last() == nullptr);
}

TEST_CASE("every kind of reel is weighed by its own parts list") {
  for (int kind = 0; kind <= static_cast<int>(record::ReelKind::wooden_reel); ++kind) {
    const std::string_view name = record::word_of(static_cast<record::ReelKind>(kind));
    CHECK(knowledge::parts_list(bench_test::shipped(), name) != nullptr);
  }
  // The same place weighs differently on different reels: the foot of a multiplier 8.5 against the
  // spool's 9, of a fly reel 11 against nothing that it lists as "spool".
  bench_test::ReelOnBench reel;
  for (const char* kind : {"foot", "spool"}) {
    reel.place(kind, "1").weight.reset();
    reel.record.places.back().kind = kind;
    reel.piece(kind);
    reel.sits(kind, kind);
  }
  const auto weight_of_foot = [&] {
    return assess(reel.record, bench_test::shipped()).last()->originality.rows[0].weight;
  };
  CHECK(weight_of_foot() == base::Ratio(850, 1750));
  reel.record.reel.kind = record::ReelKind::fly_reel;
  CHECK(weight_of_foot() == base::Ratio(1100, 1150));
}

}  // namespace winchbook::assess
