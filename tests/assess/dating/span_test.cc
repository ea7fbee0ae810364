#include "assess/dating/span.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>

#include "evidence_on_bench.h"

using namespace winchbook::dating_test;  // NOLINT: the words of these tests

namespace {

DaySpan all_in_common(const std::vector<DaySpan>& spans) {
  DaySpan out;
  for (const DaySpan& one : spans)
    out = common(out, one);
  return out;
}

struct Vector {
  const char* name;
  std::vector<const char*> intervals;
  const char* expected;  // null: no day fits all
};

}  // namespace

// Ten cases of intersecting bounds, recomputed by hand and by the pairwise rule.
TEST_CASE("the bounds of several marks meet where all of them hold") {
  const std::vector<Vector> vectors{
      {"patent of 1926, chrome, postal zone", {"1926/..", "1924/..", "1943/1963"}, "1943/1963"},
      {"DRGM and US zone", {"1891/1952", "1945/1949"}, "1945/1949"},
      {"Nippon and an acetal part", {"1891/1921", "1960/.."}, nullptr},
      {"registered design of 1931 and a label with a postcode", {"1931/1946", "1959/.."}, nullptr},
      {"ZIP code only", {"1963/.."}, "1963/.."},
      {"price in shillings only", {"../1971"}, "../1971"},
      {"touching", {"1930/1947", "1947/1952"}, "1947/1947"},
      {"three that agree", {"1920/1940", "1930/1950", "1935/1960"}, "1935/1940"},
      {"one bad of four", {"1920/1940", "1930/1950", "1935/1960", "1962/1970"}, nullptr},
  };
  for (const Vector& vector : vectors) {
    CAPTURE(vector.name);
    std::vector<DaySpan> spans;
    for (const char* interval : vector.intervals)
      spans.push_back(span(interval));
    const FewestDropped fewest = fewest_to_drop(spans, {});
    CHECK((fewest.count == 0) == (vector.expected != nullptr));
    CHECK(all_in_common(spans).empty() == (vector.expected == nullptr));
    if (vector.expected == nullptr) continue;
    REQUIRE(fewest.ways.size() == 1);
    CHECK(text(fewest.ways.front().agreed) == text(span(vector.expected)));
  }
}

TEST_CASE("nothing said is nothing bound") {
  const FewestDropped fewest = fewest_to_drop({}, {});
  CHECK(fewest.count == 0);
  REQUIRE(fewest.ways.size() == 1);
  CHECK(text(fewest.ways.front().agreed) == "../..");
}

TEST_CASE("one bad of four is named, and the rest keep their years") {
  const std::vector<DaySpan> spans{span("1920/1940"), span("1930/1950"), span("1935/1960"),
                                   span("1962/1970")};
  const FewestDropped fewest = fewest_to_drop(spans, {});
  CHECK(fewest.count == 1);
  REQUIRE(fewest.ways.size() == 1);
  CHECK(fewest.ways.front().dropped == std::vector<std::size_t>{3});
  CHECK(text(fewest.ways.front().agreed) == text(span("1935/1940")));
}

TEST_CASE("two against two: both ways are told, neither is chosen") {
  const std::vector<DaySpan> spans{span("1920/1930"), span("1950/1960"), span("1925/1935"),
                                   span("1955/..")};
  const FewestDropped fewest = fewest_to_drop(spans, {});
  CHECK(fewest.count == 2);
  REQUIRE(fewest.ways.size() == 2);
  CHECK(fewest.ways[0].dropped == std::vector<std::size_t>{1, 3});
  CHECK(fewest.ways[1].dropped == std::vector<std::size_t>{0, 2});
  CHECK(text(fewest.hull) == "1925-01-01/1960-12-31");
}

TEST_CASE("a day is within at both ends, and one day is enough") {
  const std::vector<DaySpan> meet{span("../1952-11-14"), span("1952-11-14/..")};
  CHECK(text(all_in_common(meet)) == "1952-11-14/1952-11-14");
  CHECK(fewest_to_drop(meet, {}).count == 0);
  const std::vector<DaySpan> miss{span("../1952-11-13"), span("1952-11-14/..")};
  CHECK(fewest_to_drop(miss, {}).count == 1);
}

TEST_CASE("what is empty, or lies outside the bounds, goes in every way") {
  const DaySpan crossed{Day{1950, 1, 1}, Day{1940, 1, 1}};
  const std::vector<DaySpan> spans{span("1930/1960"), crossed, span("1970/1980")};
  const FewestDropped fewest = fewest_to_drop(spans, span("1900/1965"));
  CHECK(fewest.count == 2);
  REQUIRE(fewest.ways.size() == 1);
  CHECK(fewest.ways.front().dropped == std::vector<std::size_t>{1, 2});
}

// Helly's theorem in one dimension: intervals have a common point if and only if each two have.
TEST_CASE("all agree if and only if each two agree") {
  Dice dice(7);
  int agreed = 0;
  for (int round = 0; round < 4000; ++round) {
    std::vector<DaySpan> spans;
    const int count = 1 + dice.below(6);
    for (int i = 0; i < count; ++i)
      spans.push_back(any_span(dice));
    bool pairwise = true;
    for (const DaySpan& a : spans) {
      for (const DaySpan& b : spans)
        pairwise = pairwise && !common(a, b).empty();
    }
    const bool together = fewest_to_drop(spans, {}).count == 0;
    CHECK(together == pairwise);
    CHECK(together == !all_in_common(spans).empty());
    agreed += together ? 1 : 0;
  }
  CHECK(agreed > 400);
  CHECK(agreed < 3600);
}

TEST_CASE("the fewest that must go are those that trying every set finds") {
  Dice dice(19);
  for (int round = 0; round < 1500; ++round) {
    std::vector<DaySpan> spans;
    const int count = 1 + dice.below(8);
    for (int i = 0; i < count; ++i)
      spans.push_back(any_span(dice));
    if (dice.below(8) == 0) spans.push_back({Day{1950, 1, 1}, Day{1949, 1, 1}});
    std::size_t least = spans.size();
    std::set<std::vector<std::size_t>> sets;
    for (unsigned mask = 0; mask < (1U << spans.size()); ++mask) {
      std::vector<std::size_t> dropped;
      DaySpan rest;
      bool possible = true;
      for (std::size_t i = 0; i < spans.size(); ++i) {
        if ((mask >> i & 1U) != 0) {
          dropped.push_back(i);
        } else {
          possible = possible && !spans[i].empty();
          rest = common(rest, spans[i]);
        }
      }
      if (!possible || rest.empty() || dropped.size() > least) continue;
      if (dropped.size() < least) sets.clear();
      least = dropped.size();
      sets.insert(dropped);
    }
    const FewestDropped fewest = fewest_to_drop(spans, {}, 1000);
    CHECK(fewest.count == least);
    CHECK(fewest.ways_in_all == fewest.ways.size());
    std::set<std::vector<std::size_t>> found;
    for (const WayOut& way : fewest.ways) {
      found.insert(way.dropped);
      CHECK_FALSE(way.agreed.empty());
    }
    CHECK(found == sets);
    CHECK(found.size() == fewest.ways.size());
  }
}

TEST_CASE("many ways are counted and not all told") {
  std::vector<DaySpan> spans;
  for (int year = 1000; year < 6000; ++year)
    spans.push_back({Day{year, 1, 1}, Day{year, 12, 31}});
  const FewestDropped fewest = fewest_to_drop(spans, {});
  CHECK(fewest.count == 4999);
  CHECK(fewest.ways_in_all == 5000);
  CHECK(fewest.ways.size() == 12);
  CHECK(text(fewest.hull) == "1000-01-01/5999-12-31");
}
