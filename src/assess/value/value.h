#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "assess/value/sale.h"
#include "assess/value/statistics.h"
#include "base/enum_words.h"
#include "knowledge/prices.h"

namespace winchbook::assess::value {

/// What is asked.
struct Question {
  std::string maker;
  std::string model;
  std::string currency;
  base::Day as_of;
  knowledge::Purpose purpose;
};

/// Why a sale does not count.
enum class Excluded {
  by_bench,         ///< the bench left it out, and says why
  asked,            ///< an asking price, not a sale
  after,            ///< later than the effective date
  undated,          ///< its date says less than a decade, or nothing
  twice,            ///< the same sale recorded again
  dealer,           ///< a dealer's price, and the purpose is what a seller is paid
  premium_unknown,  ///< the buyer's premium is needed and not recorded
  no_rate,          ///< no exchange rate
  no_index,         ///< before the price index begins
  outlier,          ///< far from all others; named, never dropped silently
};

[[nodiscard]] constexpr auto enum_words(Excluded /*list*/) {
  return std::to_array<base::EnumWord<Excluded>>({
      {Excluded::by_bench, "by-bench"},
      {Excluded::asked, "asked"},
      {Excluded::after, "after"},
      {Excluded::undated, "undated"},
      {Excluded::twice, "twice"},
      {Excluded::dealer, "dealer"},
      {Excluded::premium_unknown, "premium-unknown"},
      {Excluded::no_rate, "no-rate"},
      {Excluded::no_index, "no-index"},
      {Excluded::outlier, "outlier"},
  });
}

/// A sale brought to the question's basis, currency and date.
struct Comparable {
  Sale sale;
  double paid = 0;               ///< on the purpose's basis, in the sale's currency
  double rate = 1;               ///< currency
  double index = 1;              ///< price index, as of over then
  double amount = 0;             ///< paid × rate × index
  bool indexed = true;           ///< false: there is no index of that currency, taken as it was
  bool estimated_index = false;  ///< a missing month, or after the end of the index
};

struct Exclusion {
  Sale sale;
  Excluded why = Excluded::asked;
  double amount = 0;  ///< of an outlier; else 0
};

/// Which sales of the same maker and model count, in the order given.
struct Evidence {
  std::vector<Comparable> counted;
  std::vector<Exclusion> excluded;
};

/// A change made to one sale to bring it to the reel.
struct Step {
  Trait trait = Trait::surface;
  double steps = 0;    ///< how much better the reel is than the sale: above zero adds
  double percent = 0;  ///< what was added, of what the step before left
  double amount = 0;   ///< after it
};

/// One sale, adjusted to the reel.
struct AdjustedSale {
  std::size_t comparable = 0;  ///< index in Evidence::counted
  std::vector<Step> steps;
  double amount = 0;
  double weight =
      1;             ///< 1 / (1 + gross adjustment + a tenth for each year and each trait not told)
  int not_told = 0;  ///< traits that the sale or the reel does not tell
};

enum class Method { none, grid, regression };

[[nodiscard]] constexpr auto enum_words(Method /*list*/) {
  return std::to_array<base::EnumWord<Method>>({
      {Method::none, "none"},
      {Method::grid, "grid"},
      {Method::regression, "regression"},
  });
}

/// What kept a method from being used.
enum class Note {
  too_few,          ///< fewer than the least: no figure
  too_few_to_fit,   ///< fewer than a regression needs
  alike,            ///< the sales do not differ in a trait in which the reel does
  seldom_told,      ///< too few sales tell a trait for the fit: it was left out
  partly_told,      ///< sales that do not tell every trait of the fit were left out of it
  far_beyond,       ///< the reel lies further beyond the sales than the rules reach: no figure
  apart,            ///< the range would be wider than the rules let one be: no figure
  change_not_told,  ///< the sales do not tell the traits that the course changes: no figure
  collinear,        ///< traits follow from each other in these sales
  beyond,           ///< the reel lies beyond the sales in a trait
  not_told,         ///< the reel's own state is not known in a trait
  silent_sales,     ///< no sale tells a trait of the reel: nothing was adjusted for it
  no_index,         ///< some prices were taken as they were
  estimated_index,  ///< some index figures were estimated
};

[[nodiscard]] constexpr auto enum_words(Note /*list*/) {
  return std::to_array<base::EnumWord<Note>>({
      {Note::too_few, "too-few"},
      {Note::too_few_to_fit, "too-few-to-fit"},
      {Note::alike, "alike"},
      {Note::seldom_told, "seldom-told"},
      {Note::partly_told, "partly-told"},
      {Note::far_beyond, "far-beyond"},
      {Note::apart, "apart"},
      {Note::change_not_told, "change-not-told"},
      {Note::collinear, "collinear"},
      {Note::beyond, "beyond"},
      {Note::not_told, "not-told"},
      {Note::silent_sales, "silent-sales"},
      {Note::no_index, "no-price-index"},
      {Note::estimated_index, "estimated-index"},
  });
}

/// A range, never a point alone.
struct Estimate {
  Method method = Method::none;
  double low = 0;
  double middle = 0;
  double high = 0;
  std::vector<Note> notes;
  std::vector<Trait> beyond;       ///< traits in which the reel lies beyond the sales
  std::vector<Trait> alike;        ///< traits in which all sales are alike and the reel differs
  std::vector<Trait> silent;       ///< traits of the reel that no sale tells
  std::vector<Trait> untold;       ///< traits that a course changes and the sales do not tell
  std::vector<AdjustedSale> grid;  ///< for a grid
  std::optional<Fit> fit;          ///< for a regression
  std::vector<Trait> columns;      ///< of it
};

/// How far the method was off on the sales themselves, each told from the others.
struct Trial {
  int sales = 0;            ///< tried: all, or of a grid some of them, evenly taken
  double median_error = 0;  ///< share of the price, 0.1 is a tenth
  double ninth_error = 0;   ///< nine in ten were off by no more
};

/// One reel's value at one state.
struct Finding {
  Evidence evidence;
  std::vector<Estimate> estimates;  ///< one for each state asked
  std::vector<Estimate> expected;   ///< one for each state that is only expected
  std::optional<Trial> trial;       ///< empty when there is no figure
  /// What the middle of the first estimate would be with the outliers in; empty without outliers.
  std::optional<double> with_outliers;
};

/// Without regard to case, spaces and stops: how makers and models are compared.
[[nodiscard]] std::string folded_name(std::string_view name);

/// Brings each sale of that maker and model to one basis, currency and date, and says why the
/// others do not count. Formula: paid × rate × index(as of) / index(then).
[[nodiscard]] Evidence weigh_sales(const Question& question, const std::vector<Sale>& sales,
                                   const knowledge::Prices& prices);

/// Adjusts the sale to the reel: better sale, less. Each step is a percentage of what the one
/// before left. Example: +5 then −10 in a hundred on 200 is 189, not 190.
[[nodiscard]] AdjustedSale adjust(const Comparable& sale, const State& reel,
                                  const Question& question,
                                  const std::vector<knowledge::Adjustment>& adjustments);

/// The value of a reel in each of `states`. With `regression` sales or more a regression of the
/// log price on the traits, exp(mean ± t sd); with fewer the adjusted grid: weighted median, and
/// the lowest and highest, or from ten sales on the tenth and ninetieth quantile; below `least`,
/// further than `reach` beyond the sales, or wider than `spread`, none. `expected` are states that
/// nobody has seen: there is no figure either where no sale tells a trait in which one differs from
/// the first of `states`. A trait is fitted when nine in ten sales tell it.
[[nodiscard]] Finding value(const Question& question, const std::vector<State>& states,
                            const std::vector<Sale>& sales, const knowledge::Prices& prices,
                            const std::vector<State>& expected = {});

}  // namespace winchbook::assess::value
