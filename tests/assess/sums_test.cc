#include "assess/sums.h"

#include <doctest/doctest.h>

#include "assess/assessment.h"
#include "assess/reel_on_bench.h"

namespace winchbook::assess {
namespace {

base::Money money(const char* amount, const char* currency = "GBP") {
  return {bench_test::decimal(amount), currency};
}

record::Work work(const char* hours, const std::optional<base::Money>& parts) {
  record::Work one;
  one.hours = base::Hours{bench_test::decimal(hours)};
  one.parts_cost = parts;
  return one;
}

}  // namespace

TEST_CASE("hours and the material of a visit are added up") {
  bench_test::ReelOnBench reel;
  reel.visit().work = {work("2.5", money("2.40")), work("1.5", money("1.80")),
                       work("0.5", std::nullopt), work("8", money("14.50"))};
  const Sums all = sums(reel.record, reel.visit());
  CHECK(all.hours == bench_test::decimal("12.5"));
  CHECK(all.parts == std::vector{money("18.70")});
  CHECK(all.donors.empty());
}

TEST_CASE("currencies are never added to each other, and stand as they come") {
  bench_test::ReelOnBench reel;
  reel.visit().work = {work("1", money("14.50", "USD")), work("1", money("4.20")),
                       work("1", money("0.50", "USD"))};
  CHECK(sums(reel.record, reel.visit()).parts == std::vector{money("15.00", "USD"), money("4.20")});
}

TEST_CASE("a donor counts that was acquired since the reel was taken in, or may have been") {
  bench_test::ReelOnBench reel;  // taken in on 2026-03-03
  const auto donor = [&](const char* acquired, const char* cost) {
    record::Donor one;
    if (acquired != nullptr) one.acquired = bench_test::date(acquired);
    one.cost = money(cost);
    reel.record.donors.push_back(one);
  };
  donor("2026-03-02", "1.00");
  donor(nullptr, "2.00");
  donor("2026-03-03", "45.00");
  donor("2026", "22.50");
  CHECK(sums(reel.record, reel.visit()).donors == std::vector{money("67.50")});
}

TEST_CASE("the last agreement that names a limit is the one that holds") {
  record::Visit visit;
  CHECK(agreed_limit(visit) == nullptr);
  visit.agreements.resize(3);
  CHECK(agreed_limit(visit) == nullptr);
  visit.agreements[0].cost_limit = money("120.00");
  visit.agreements[1].cost_limit = money("355.00");
  CHECK(agreed_limit(visit) == &visit.agreements[1]);
}

TEST_CASE("the sums of each visit stand in the assessment") {
  bench_test::ReelOnBench reel;
  reel.visit().work = {work("2", money("3.00"))};
  const Assessment assessment = assess(reel.record, bench_test::shipped());
  CHECK(assessment.last()->sums.parts == std::vector{money("3.00")});
}

}  // namespace winchbook::assess
