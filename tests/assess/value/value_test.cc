#include "assess/value/value.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "assess/value/expected.h"
#include "base/files.h"

namespace {

using namespace winchbook::assess::value;
using winchbook::base::Decimal;
using winchbook::base::EdtfDate;
namespace knowledge = winchbook::knowledge;

knowledge::Prices prices() {
  const auto loaded = knowledge::load_prices({winchbook::base::RealFiles(), WINCHBOOK_SOURCE_DIR});
  REQUIRE(loaded);
  return *loaded;
}

/// Nothing but the rules: no index, no rates.
knowledge::Prices bare() {
  knowledge::Prices all = prices();
  all.indices.clear();
  all.rates.clear();
  return all;
}

Question question(const char* purpose = "insurance", const char* currency = "GBP") {
  return {"Harroway Reel Works",
          "Skerry No. 40",
          currency,
          {2026, 6, 1},
          *find_purpose(prices(), purpose)};
}

Sale sale(double price, const char* date = "2026-05-01", Basis basis = Basis::premium) {
  Sale one;
  one.date = EdtfDate::parse(date).value();
  one.price = {Decimal(static_cast<std::int64_t>(std::llround(price * 100)), 2), "GBP"};
  one.basis = basis;
  one.maker = "Harroway Reel Works";
  one.model = "SKERRY No 40";
  for (int i = 0; i < kTraits; ++i)
    one.state.traits.at(static_cast<std::size_t>(i)) = 1;
  return one;
}

State state(double of_all = 1) {
  State one;
  one.traits.fill(of_all);
  return one;
}

bool has(const Estimate& estimate, Note note) {
  return std::count(estimate.notes.begin(), estimate.notes.end(), note) == 1;
}

Excluded why(const std::vector<Sale>& sales, const Question& asked = question(),
             const knowledge::Prices& known = bare()) {
  const Evidence evidence = weigh_sales(asked, sales, known);
  REQUIRE(evidence.excluded.size() == 1);
  return evidence.excluded.front().why;
}

}  // namespace

TEST_CASE("fewer than three sales give no figure") {
  const Finding two = value(question(), {state()}, {sale(100), sale(120)}, bare());
  CHECK(two.estimates.at(0).method == Method::none);
  CHECK(has(two.estimates.at(0), Note::too_few));
  const Finding three = value(question(), {state()}, {sale(100), sale(120), sale(110)}, bare());
  CHECK(three.estimates.at(0).method == Method::grid);
  CHECK(three.estimates.at(0).middle == doctest::Approx(110));
  CHECK(three.estimates.at(0).low == doctest::Approx(100));
  CHECK(three.estimates.at(0).high == doctest::Approx(120));
}

TEST_CASE("what was asked is never mixed with what was paid") {
  CHECK(why({sale(900, "2026-05-01", Basis::asking)}) == Excluded::asked);
  const std::vector<Sale> three{sale(100), sale(120), sale(110)};
  std::vector<Sale> with_asked = three;
  for (int i = 0; i < 50; ++i)
    with_asked.push_back(sale(900 + i, "2026-05-01", Basis::asking));
  CHECK(value(question(), {state()}, with_asked, bare()).estimates.at(0).middle ==
        value(question(), {state()}, three, bare()).estimates.at(0).middle);
}

TEST_CASE("each sale that does not count says why") {
  CHECK(why({sale(100, "2026-06-02")}) == Excluded::after);
  CHECK(why({sale(100, "19XX")}) == Excluded::undated);
  CHECK(why({sale(100, "../2020")}) == Excluded::undated);
  CHECK(why({sale(100, "2026-05-01", Basis::hammer)}) == Excluded::premium_unknown);
  CHECK(why({sale(100, "2026-05-01", Basis::dealer)}, question("sale")) == Excluded::dealer);
  CHECK(why({sale(100)}, question("sale")) == Excluded::premium_unknown);
  CHECK(why({sale(100), sale(100)}) == Excluded::twice);
  Sale dollars = sale(100);
  dollars.price.currency = "USD";
  CHECK(why({dollars}) == Excluded::no_rate);
  CHECK(why({sale(100, "1950")}, question(), prices()) == Excluded::no_index);
  Sale left_out = sale(100);
  left_out.not_used = "sold with a boat";
  CHECK(why({left_out}) == Excluded::by_bench);
  Sale another = sale(100);
  another.model = "Skerry No. 30";
  const Evidence evidence = weigh_sales(question(), {another}, bare());
  CHECK(evidence.counted.empty());
  CHECK(evidence.excluded.empty());
}

TEST_CASE("the purpose decides whose price counts") {
  Sale hammer = sale(100, "2026-05-01", Basis::hammer);
  hammer.fees = Decimal(25, 0);
  CHECK(weigh_sales(question("insurance"), {hammer}, bare()).counted.at(0).paid == 125);
  CHECK(weigh_sales(question("sale"), {hammer}, bare()).counted.at(0).paid == 100);
  Sale premium = sale(125);
  premium.fees = Decimal(25, 0);
  CHECK(weigh_sales(question("insurance"), {premium}, bare()).counted.at(0).paid == 125);
  CHECK(weigh_sales(question("sale"), {premium}, bare()).counted.at(0).paid == 100);
  CHECK(weigh_sales(question("family"), {sale(80, "2026-05-01", Basis::dealer)}, bare())
            .counted.size() == 1);
}

// Bureau of Labor Statistics, CPI-U: $10 of 1925 is 178.825 in 2024, $12.50 of 1938 is 278.2574 in
// 2024, $29.95 of 1955 is 340.8333 in 2023 (means of months).
TEST_CASE("prices are carried by the index") {
  const knowledge::Prices known = prices();
  const knowledge::PriceIndex* index = find_index(known, "USD");
  REQUIRE(index != nullptr);
  const auto year = [&](std::int64_t which) {
    return index_over(*index, {which, 1, 1}, {which, 12, 31})->value;
  };
  CHECK(10 * year(2024) / year(1925) == doctest::Approx(178.825).epsilon(2e-5));
  CHECK(12.5 * year(2024) / year(1938) == doctest::Approx(278.2574).epsilon(2e-5));
  CHECK(29.95 * year(2023) / year(1955) == doctest::Approx(340.8333).epsilon(2e-5));
  // October 2025 was never published
  const auto missing = index_at(*index, 2025, 10);
  REQUIRE(missing);
  CHECK(missing->between);
  CHECK(
      missing->value ==
      doctest::Approx((index_at(*index, 2025, 9)->value + index_at(*index, 2025, 11)->value) / 2));
  CHECK(index_at(*index, 2040, 1)->beyond);
  CHECK_FALSE(index_at(*index, 1912, 12));
  Question asked = question("insurance", "USD");
  asked.as_of = {2024, 12, 31};
  Sale old = sale(10, "1925");
  old.price.currency = "USD";
  const Evidence evidence = weigh_sales(asked, {old}, known);
  REQUIRE(evidence.counted.size() == 1);
  CHECK(evidence.counted[0].amount ==
        doctest::Approx(10 * index_at(*index, 2024, 12)->value / year(1925)));
}

TEST_CASE("currencies meet through the table, its inverse, or one between") {
  knowledge::Prices known = bare();
  known.rates = {{2024, "EUR", "USD", 1.25}, {2024, "EUR", "GBP", 0.8}};
  CHECK(*exchange(known, "EUR", "USD", 2024) == 1.25);
  CHECK(*exchange(known, "USD", "EUR", 2024) == 0.8);
  CHECK(*exchange(known, "GBP", "USD", 2024) == doctest::Approx(1.25 / 0.8));
  CHECK(*exchange(known, "GBP", "USD", 2026) == doctest::Approx(1.25 / 0.8));
  CHECK_FALSE(exchange(known, "GBP", "USD", 2027));
  CHECK_FALSE(exchange(known, "GBP", "JPY", 2024));
  CHECK(*exchange(known, "JPY", "JPY", 1900) == 1);
}

// Percentages one after the other: +5 then −10 in a hundred on 200 make 189.00, not the 190.00 of
// their sum; a better sale is brought down, a worse one up (the order and the sign rule of the
// sales comparison, as appraisal texts have it).
TEST_CASE("the sale is adjusted to the reel, step by step") {
  const std::vector<knowledge::Adjustment> steps{{"surface", 5, {}}, {"box", 10, {}}};
  Comparable one;
  one.sale = sale(200);
  one.amount = 200;
  one.sale.state[Trait::surface] = 2;  // worse than the reel: up
  one.sale.state[Trait::box] = 0;      // has a box, the reel has none: down
  State reel = state(1);
  const AdjustedSale adjusted = adjust(one, reel, question(), steps);
  CHECK(adjusted.amount == doctest::Approx(189.0));
  REQUIRE(adjusted.steps.size() == 2);
  CHECK(adjusted.steps[0].percent == doctest::Approx(5));
  CHECK(adjusted.steps[1].percent == doctest::Approx(-10));
  // A: 120 less ten in a hundred is 108.
  Comparable a;
  a.sale = sale(120);
  a.amount = 120;
  a.sale.state[Trait::box] = 0;
  CHECK(adjust(a, reel, question(), steps).amount == doctest::Approx(108.0));
  // never below nothing
  a.sale.state[Trait::surface] = 0;
  reel[Trait::surface] = 3;
  CHECK(adjust(a, reel, question(), {{"surface", 60, {}}}).amount > 0);
  // what is not told is not adjusted, and weighs less
  Comparable silent = a;
  silent.sale.state = {};
  const AdjustedSale left = adjust(silent, reel, question(), steps);
  CHECK(left.amount == 120);
  CHECK(left.not_told == 2);
  CHECK(left.weight < adjust(one, one.sale.state, question(), steps).weight);
}

TEST_CASE("a better reel is never worth less") {
  const std::vector<Sale> sales{sale(100), sale(120), sale(110), sale(140), sale(95)};
  const Finding finding = value(question(), {state(0), state(1), state(2)}, sales, bare());
  for (std::size_t i = 1; i < finding.estimates.size(); ++i) {
    CHECK(finding.estimates[i].method != Method::none);
    CHECK(finding.estimates[i].middle < finding.estimates[i - 1].middle);
  }
}

TEST_CASE("a price a thousand times the rest is named, not averaged in and not dropped silently") {
  std::vector<Sale> sales{sale(100), sale(120), sale(110), sale(105), sale(115)};
  const double without = value(question(), {state()}, sales, bare()).estimates.at(0).middle;
  sales.push_back(sale(110000));
  const Finding finding = value(question(), {state()}, sales, bare());
  CHECK(finding.estimates.at(0).middle == doctest::Approx(without));
  REQUIRE(finding.evidence.excluded.size() == 1);
  CHECK(finding.evidence.excluded[0].why == Excluded::outlier);
  CHECK(finding.evidence.excluded[0].amount == doctest::Approx(110000));
  REQUIRE(finding.with_outliers);
  CHECK(*finding.with_outliers > without);
}

TEST_CASE("ten copies of one sale are one sale") {
  std::vector<Sale> sales{sale(100), sale(120), sale(110)};
  const double once = value(question(), {state()}, sales, bare()).estimates.at(0).middle;
  for (int i = 0; i < 9; ++i)
    sales.push_back(sale(120));
  const Finding finding = value(question(), {state()}, sales, bare());
  CHECK(finding.estimates.at(0).middle == doctest::Approx(once));
  CHECK(finding.evidence.excluded.size() == 9);
}

TEST_CASE("with enough sales the log price is fitted, and the true price lies within") {
  std::mt19937 random(40);
  std::normal_distribution<double> noise(0, 0.1);
  std::uniform_int_distribution<int> word(0, 3);
  std::vector<Sale> sales;
  for (int i = 0; i < 60; ++i) {
    Sale one = sale(1, "2026-05-01");
    const int surface = word(random);
    const int working = word(random);
    const double price = 200 * std::exp(-0.2 * surface - 0.1 * working + noise(random));
    one.price.amount = Decimal(std::llround(price * 100), 2);
    one.state = {};
    one.state[Trait::surface] = surface;
    one.state[Trait::working] = working;
    one.source = std::to_string(i);
    sales.push_back(one);
  }
  State reel;
  reel[Trait::surface] = 1;
  reel[Trait::working] = 2;
  const Finding finding = value(question(), {reel}, sales, bare());
  const Estimate& estimate = finding.estimates.at(0);
  CHECK(estimate.method == Method::regression);
  CHECK(estimate.columns == std::vector<Trait>{Trait::surface, Trait::working});
  const double truth = 200 * std::exp(-0.4);
  CHECK(estimate.middle == doctest::Approx(truth).epsilon(0.05));
  CHECK(estimate.low < truth);
  CHECK(estimate.high > truth);
  REQUIRE(finding.trial);
  CHECK(finding.trial->sales == 60);
  CHECK(finding.trial->median_error < 0.12);
  CHECK(finding.trial->median_error > 0.03);
  CHECK(finding.trial->ninth_error > finding.trial->median_error);
}

TEST_CASE("traits that follow from each other are not told apart: the grid is used") {
  std::vector<Sale> sales;
  for (int i = 0; i < 40; ++i) {
    Sale one = sale(100 + i % 4 * 10);
    one.state = {};
    one.state[Trait::surface] = i % 4;
    one.state[Trait::working] = i % 4;
    one.source = std::to_string(i);
    sales.push_back(one);
  }
  const Finding finding = value(question(), {state()}, sales, bare());
  CHECK(finding.estimates.at(0).method == Method::grid);
  CHECK(has(finding.estimates.at(0), Note::collinear));
}

TEST_CASE("sales all of one grade say nothing of another") {
  std::vector<Sale> sales;
  for (int i = 0; i < 20; ++i) {
    sales.push_back(sale(100 + i));
    sales.back().source = std::to_string(i);
  }
  const Finding finding = value(question(), {state(1), state(3)}, sales, bare());
  CHECK_FALSE(has(finding.estimates.at(0), Note::alike));
  CHECK(has(finding.estimates.at(1), Note::alike));
  CHECK(has(finding.estimates.at(1), Note::far_beyond));
  CHECK(finding.estimates.at(1).method == Method::none);
  // one step away the bench's own steps speak, not a fit that cannot see the difference
  const Estimate near = value(question(), {state(2)}, sales, bare()).estimates.at(0);
  CHECK(near.method == Method::grid);
  CHECK(near.alike.size() == kTraits);
  CHECK(near.middle < finding.estimates.at(0).middle);
}

TEST_CASE("a reel further beyond the sales than the rules reach has no figure") {
  const std::vector<Sale> sales{sale(100), sale(120), sale(110)};
  State reel = state(1);
  reel[Trait::surface] = 2;
  CHECK(value(question(), {reel}, sales, bare()).estimates.at(0).method == Method::grid);
  reel[Trait::surface] = 3;
  const Finding far = value(question(), {reel}, sales, bare());
  CHECK(far.estimates.at(0).method == Method::none);
  CHECK(far.estimates.at(0).alike == std::vector<Trait>{Trait::surface});
  knowledge::Prices wider = bare();
  wider.rules.reach = 2;
  CHECK(value(question(), {reel}, sales, wider).estimates.at(0).method == Method::grid);
}

TEST_CASE("with too few sales to name an outlier, one a thousand times the rest gives no figure") {
  std::vector<Sale> sales{sale(100), sale(120), sale(110), sale(110000)};
  const Finding finding = value(question(), {state()}, sales, bare());
  CHECK(finding.evidence.excluded.empty());
  CHECK(finding.estimates.at(0).method == Method::none);
  CHECK(has(finding.estimates.at(0), Note::apart));
  sales.back() = sale(900);
  CHECK(value(question(), {state()}, sales, bare()).estimates.at(0).method == Method::grid);
}

TEST_CASE("a state that nobody has seen is told only where the sales tell the difference") {
  std::vector<Sale> sales{sale(100), sale(120), sale(110)};
  State better = state(1);
  better[Trait::working] = 0;
  const Finding told = value(question(), {state()}, sales, bare(), {better});
  CHECK(told.expected.at(0).middle > told.estimates.at(0).middle);
  for (Sale& one : sales)
    one.state[Trait::working].reset();
  const Finding untold = value(question(), {state(), better}, sales, bare(), {better});
  CHECK(untold.estimates.at(1).method == Method::grid);  // seen: the doubt is noted
  CHECK(has(untold.estimates.at(1), Note::silent_sales));
  CHECK(untold.estimates.at(1).silent == std::vector<Trait>{Trait::working});
  CHECK(untold.expected.at(0).method == Method::none);
  CHECK(untold.expected.at(0).untold == std::vector<Trait>{Trait::working});
  CHECK(has(untold.expected.at(0), Note::change_not_told));
}

TEST_CASE("a trait that nine in ten sales tell is fitted on those") {
  std::mt19937 random(41);
  std::normal_distribution<double> noise(0, 0.05);
  std::vector<Sale> sales;
  for (int i = 0; i < 40; ++i) {
    Sale one = sale(1);
    one.price.amount = Decimal(std::llround(10000 * std::exp(-0.2 * (i % 4) + noise(random))), 2);
    one.state = {};
    one.state[Trait::surface] = i % 4;
    if (i < 20) one.state[Trait::box] = i % 2;
    one.source = std::to_string(i);
    sales.push_back(one);
  }
  sales[3].state[Trait::surface].reset();
  State reel;
  reel[Trait::surface] = 1;
  const Estimate estimate = value(question(), {reel}, sales, bare()).estimates.at(0);
  CHECK(estimate.method == Method::regression);
  CHECK(estimate.columns == std::vector<Trait>{Trait::surface});
  CHECK(estimate.fit->rows == 39);
  CHECK(has(estimate, Note::partly_told));
  CHECK(has(estimate, Note::seldom_told));
  CHECK(estimate.middle == doctest::Approx(100 * std::exp(-0.2)).epsilon(0.05));
}

TEST_CASE("what a course makes of a reel") {
  using winchbook::record::Course;
  const auto courses =
      knowledge::load_courses({winchbook::base::RealFiles(), WINCHBOOK_SOURCE_DIR});
  REQUIRE(courses);
  State found;
  found[Trait::surface] = 2;
  found[Trait::structure] = 1;
  found[Trait::working] = 3;
  found[Trait::completeness] = 1;
  found[Trait::originality] = 0.6;  // 94 of 100
  CHECK(changes(found, expected_state(found, Course::keep_as_found, *courses)).empty());
  CHECK(changes(found, expected_state(found, Course::clean_for_show, *courses)).empty());
  const State fishing = expected_state(found, Course::make_it_fish, *courses);
  CHECK(fishing[Trait::working] == 1);
  CHECK(fishing[Trait::completeness] == 0);
  CHECK(fishing[Trait::surface] == 2);
  CHECK(*fishing[Trait::originality] == doctest::Approx(10 - 9.4 * 0.85));
  const State rebuilt = expected_state(found, Course::rebuild_to_fish, *courses);
  CHECK(rebuilt[Trait::working] == 0);
  CHECK(rebuilt[Trait::structure] == 0);
  CHECK(rebuilt[Trait::surface] == 3);
  // what is better already stays, and what is not known stays so unless one word is left
  found[Trait::working] = 0;
  CHECK(expected_state(found, Course::make_it_fish, *courses)[Trait::working] == 0);
  found[Trait::working].reset();
  CHECK_FALSE(expected_state(found, Course::make_it_fish, *courses)[Trait::working]);
  CHECK(expected_state(found, Course::rebuild_to_fish, *courses)[Trait::working] == 0);
}

TEST_CASE("a grid of many sales is tried on some of them") {
  std::vector<Sale> sales;
  for (int i = 0; i < 1000; ++i) {
    sales.push_back(sale(100 + i % 7));
    sales.back().source = std::to_string(i);
    sales.back().state[Trait::surface] = sales.back().state[Trait::working] = i % 3;
  }
  const Finding finding = value(question(), {state()}, sales, bare());
  CHECK(finding.estimates.at(0).method == Method::grid);
  REQUIRE(finding.trial);
  CHECK(finding.trial->sales == 200);
}

TEST_CASE("a state that is not known is said, and adjusts nothing") {
  const std::vector<Sale> sales{sale(100), sale(120), sale(110)};
  const Finding finding = value(question(), {State{}}, sales, bare());
  CHECK(has(finding.estimates.at(0), Note::not_told));
  CHECK(finding.estimates.at(0).middle == doctest::Approx(110));
}
