#include "assess/dating/profile.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numeric>

#include "evidence_on_bench.h"

using namespace winchbook::dating_test;  // NOLINT: the words of these tests
using doctest::Approx;

namespace {

std::vector<double> sums(const std::vector<Stretch>& spans, const std::vector<Stretch>& bins) {
  std::vector<double> all(bins.size(), 0.0);
  for (const Stretch& one : spans) {
    const std::vector<double> weights = aoristic_weights(one, bins);
    for (std::size_t i = 0; i < bins.size(); ++i)
      all[i] += weights[i];
  }
  return all;
}

double total(const std::vector<double>& weights) {
  return std::accumulate(weights.begin(), weights.end(), 0.0);
}

YearProfile profile_of(const std::vector<double>& shares, std::int64_t first = 1940) {
  YearProfile profile;
  for (std::size_t i = 0; i < shares.size(); ++i)
    profile.emplace_back(first + static_cast<std::int64_t>(i), shares[i]);
  return profile;
}

}  // namespace

// Published: the test input of the R package kairos (after Palmisano and others 2017), four spans
// over four bins of 200 years; counts 1, 3, 3, 3 and weights 1/4, 13/12, 13/12, 19/12.
TEST_CASE("aoristic weights are those published") {
  const std::vector<Stretch> bins{{-2200, -2000}, {-2000, -1800}, {-1800, -1600}, {-1600, -1400}};
  const std::vector<Stretch> spans{{-2200, -1400}, {-2000, -1400}, {-2000, -1600}, {-1600, -1400}};
  const std::vector<double> all = sums(spans, bins);
  CHECK(all[0] == Approx(1.0 / 4).epsilon(1e-12));
  CHECK(all[1] == Approx(13.0 / 12).epsilon(1e-12));
  CHECK(all[2] == Approx(13.0 / 12).epsilon(1e-12));
  CHECK(all[3] == Approx(19.0 / 12).epsilon(1e-12));
  const std::vector<int> counts{1, 3, 3, 3};
  for (std::size_t b = 0; b < bins.size(); ++b) {
    int count = 0;
    for (const Stretch& one : spans)
      count += aoristic_weights(one, {&bins[b], 1})[0] > 0 ? 1 : 0;
    CHECK(count == counts[b]);
  }
}

// The invariant of aoristic sums: over bins that cover all spans they add up to the number of
// spans.
TEST_CASE("aoristic weights add up to the number of spans, whatever the bins") {
  Dice dice(3);
  for (int round = 0; round < 300; ++round) {
    std::vector<Stretch> spans;
    const int count = 1 + dice.below(40);
    for (int i = 0; i < count; ++i) {
      const int from = 1850 + dice.below(100);
      spans.push_back({from, from + 1 + dice.below(40)});
    }
    std::vector<Stretch> bins;
    const int width = 1 + dice.below(25);
    for (int from = 1850; from < 2000; from += width)
      bins.push_back({from, from + width});
    CHECK(total(sums(spans, bins)) == Approx(count).epsilon(1e-9));
  }
}

TEST_CASE("a window outside the bins loses its weight, and an empty one has none") {
  const std::vector<Stretch> bins{{500, 600}};
  CHECK(aoristic_weights({400, 600}, bins)[0] == Approx(0.5));
  CHECK(aoristic_weights({600, 600}, bins)[0] == 0.0);
  CHECK(aoristic_weights({700, 650}, bins)[0] == 0.0);
}

TEST_CASE("one year counts as one year") {
  const YearProfile profile = year_profile(span("1947"), {});
  REQUIRE(profile.size() == 1);
  CHECK(profile.front().first == 1947);
  CHECK(profile.front().second == Approx(1.0));
  CHECK(shortest_range(profile, 0.9) == YearRange{1947, 1947});
}

TEST_CASE("a year of which a part is within counts by that part") {
  const YearProfile profile = year_profile(span("1951-12-31/1952-12-31"), {});
  REQUIRE(profile.size() == 2);
  CHECK(profile[0].second == Approx(1.0 / 367));
  CHECK(profile[1].second == Approx(366.0 / 367));
}

TEST_CASE("beyond a soft end a year weighs half every so many years") {
  const std::vector<SoftEnd> soft{{true, 1950, 2}, {false, 1954, 5}};
  const YearProfile profile = year_profile(span("1940/1964"), soft);
  const auto weight = [&](int year) {
    return profile.at(static_cast<std::size_t>(year - 1940)).second;
  };
  CHECK(weight(1950) == Approx(weight(1953)).epsilon(0.003));
  CHECK(weight(1947) / weight(1951) == Approx(std::exp2(-1.5)).epsilon(0.003));
  CHECK(weight(1959) / weight(1951) == Approx(0.5).epsilon(0.003));
  CHECK(weight(1949) < weight(1950));
  double all = 0;
  for (const auto& [year, share] : profile)
    all += share;
  CHECK(all == Approx(1.0));
}

TEST_CASE("saying a thing twice does not make it surer") {
  const std::vector<SoftEnd> once{{true, 1950, 2}};
  const std::vector<SoftEnd> often(50, once.front());
  const YearProfile a = year_profile(span("1940/1964"), once);
  CHECK(a == year_profile(span("1940/1964"), often));
}

TEST_CASE("no profile without both ends, or over a thousand years") {
  CHECK(year_profile(span("1940/.."), {}).empty());
  CHECK(year_profile(span("../1940"), {}).empty());
  CHECK(year_profile(span("0100/1940"), {}).empty());
  CHECK(year_profile(span("Y-100000000000/Y100000000000"), {}).empty());
  CHECK(year_profile({Day{1950, 1, 1}, Day{1949, 1, 1}}, {}).empty());
  CHECK_FALSE(shortest_range({}, 0.5).has_value());
}

TEST_CASE("a run of even years: half and nine tenths, the earliest on ties") {
  const YearProfile even = profile_of(std::vector<double>(10, 0.1));
  CHECK(shortest_range(even, 0.5) == YearRange{1940, 1944});
  CHECK(shortest_range(even, 0.9) == YearRange{1940, 1948});
  CHECK(shortest_range(profile_of({0.3, 0.2, 0.0, 0.3, 0.2}), 0.5) == YearRange{1940, 1941});
}

TEST_CASE("the shortest range is the one that trying every range finds") {
  Dice dice(11);
  for (int round = 0; round < 800; ++round) {
    std::vector<double> shares;
    const int years = 1 + dice.below(30);
    for (int i = 0; i < years; ++i)
      shares.push_back(dice.below(4) == 0 ? 0.0 : 1.0 + dice.below(9));
    const double all = total(shares);
    if (all <= 0) continue;
    for (double& share : shares)
      share /= all;
    for (const double wanted : {0.5, 0.9}) {
      YearRange best{0, 1000};
      for (std::size_t from = 0; from < shares.size(); ++from) {
        double held = 0;
        for (std::size_t to = from; to < shares.size(); ++to) {
          held += shares[to];
          const auto length = static_cast<std::int64_t>(to - from);
          if (held >= wanted - 1e-9 && length < best.last - best.first) {
            best = {1940 + static_cast<std::int64_t>(from), 1940 + static_cast<std::int64_t>(to)};
          }
        }
      }
      CHECK(shortest_range(profile_of(shares), wanted) == best);
    }
  }
}
