#include "answers/value.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "answers/assessed.h"
#include "answers/sales.h"
#include "assess/value/recorded_sales.h"

namespace winchbook::answers {
namespace {

using assess::ValuedState;
using assess::value::Basis;
using assess::value::Sale;
using assess::value::State;
using assess::value::StateFrom;
using assess::value::Trait;

std::string purposes(const knowledge::Prices& prices) {
  std::string names;
  for (const knowledge::Purpose& one : prices.rules.purposes)
    names += (names.empty() ? "" : ", ") + one.name;
  return names;
}

base::Result<SalesRead> sales_for(library::Library& library, const ValueRequest& request,
                                  const record::Record& record, int most) {
  if (request.terms.sales.empty()) return SalesRead{assess::value::recorded_sales(record), 0};
  const std::string maker = assess::value::folded_name(record.reel.maker.name);
  const std::string model = assess::value::folded_name(record.reel.model);
  const auto wants = [&](std::string_view their_maker, std::string_view their_model) {
    return assess::value::folded_name(their_model) == model &&
           assess::value::folded_name(their_maker) == maker;
  };
  return read_sales(library, request.terms.sales, request.today, wants,
                    static_cast<std::size_t>(most));
}

}  // namespace

base::Result<Valued> value(library::Library& library, const ValueRequest& request) {
  auto loaded = recordfile::read(library.files(), request.record, world.data / "schemas");
  if (!loaded) return loaded.faults();
  const auto found = assessed(library, loaded->record);
  if (!found) return found.faults();
  return value(library, request, std::move(loaded).value(), found->assessment);
}

base::Result<Valued> value(library::Library& library, const ValueRequest& request,
                           recordfile::LoadedRecord loaded, const assess::Assessment& assessment) {
  const record::Record& record = loaded.record;
  const auto prices = knowledge::load_prices(library.files(), world.data, request.terms.prices);
  if (!prices) return prices.faults();
  auto courses = knowledge::load_courses(library.files(), world.data);
  if (!courses) return courses.faults();
  const ValueTerms& terms = request.terms;
  const knowledge::Purpose* purpose = find_purpose(*prices, terms.purpose);
  if (purpose == nullptr) {
    return base::of_command(base::error(fmt::format("there is no purpose \"{}\"", terms.purpose),
                                        "ask for " + purposes(*prices), "command-purpose"));
  }
  const base::Day as_of = terms.as_of.value_or(request.today);
  if (as_of > request.today) {
    return base::of_command(
        base::error(fmt::format("--as-of: {} has not come yet", base::iso_text(as_of)),
                    "no sale is known of it; ask for a day up to " + base::iso_text(request.today),
                    "command-as-of"));
  }
  const auto read = sales_for(library, request, record, prices->rules.most);
  if (!read) return read.faults();
  const std::vector<Sale>& sales = read->sales;

  Valued valued;
  valued.older = read->older;
  valued.question = {record.reel.maker.name, record.reel.model, terms.currency, as_of, *purpose};
  if (valued.question.currency.empty() && record.value) {
    valued.question.currency = record.value->currency;
  }
  if (valued.question.currency.empty()) {
    valued.question.currency = assess::value::most_frequent_currency(sales);
  }
  valued.states = assess::valued_states(record, assessment, prices->rules.box);
  std::vector<State> states;
  for (const ValuedState& one : valued.states)
    states.push_back(one.state);
  std::vector<State> expected;
  if (const record::Visit* visit = last_visit(record); visit != nullptr) {
    valued.courses = course_states(*visit, states.front(), states.back(), *courses);
    expected = expected_states(valued.courses);
  }
  valued.finding = assess::value::value(valued.question, states, sales, *prices, expected);
  valued.rules = prices->rules;
  valued.bench = std::move(courses).value();
  valued.loaded = std::move(loaded);
  return valued;
}

std::string price_text(double amount, RoundPrice how) {
  return fmt::format("{:.0f}", assess::value::rounded_price(amount, how));
}

ExclusionTerm term(assess::value::Excluded why) {
  using assess::value::Excluded;
  switch (why) {
    case Excluded::by_bench:
      return {"by-bench", "left out by the bench"};
    case Excluded::asked:
      return {"asked", "asked, not paid"};
    case Excluded::after:
      return {"after", "later than the day the value is for"};
    case Excluded::undated:
      return {"undated", "its date says too little"};
    case Excluded::twice:
      return {"twice", "the same sale is recorded already"};
    case Excluded::dealer:
      return {"dealer", "a dealer's price is not what an owner is paid"};
    case Excluded::premium_unknown:
      return {"premium-unknown", "what the buyer paid on top of the hammer price is not recorded"};
    case Excluded::no_rate:
      return {"no-rate", "no exchange rate is known for its year"};
    case Excluded::no_index:
      return {"no-index", "it lies before the price index begins"};
    case Excluded::outlier:
      break;
  }
  return {"outlier", "far from all the others: look at it again"};
}

ExclusionTerm term(assess::value::Note note) {
  using assess::value::Note;
  switch (note) {
    case Note::too_few:
      return {"too-few", "there are too few sales: no figure is given"};
    case Note::too_few_to_fit:
      return {"too-few-to-fit", "there are too few sales to fit prices to traits"};
    case Note::alike:
      return {"alike", "all sales are alike in a trait in which this reel differs from them"};
    case Note::seldom_told:
      return {"seldom-told", "too few sales tell a trait for the fit: it was left out"};
    case Note::partly_told:
      return {"partly-told", "sales that do not tell every trait were left out of the fit"};
    case Note::far_beyond:
      return {"far-beyond", "that is too far beyond the sales: no figure is given"};
    case Note::apart:
      return {"apart", "the sales lie too far apart: no figure is given"};
    case Note::change_not_told:
      return {"change-not-told", "no sale tells what would change: no figure is given"};
    case Note::collinear:
      return {"collinear",
              "in these sales the traits follow from each other and cannot be told apart"};
    case Note::beyond:
      return {"beyond", "this reel lies beyond all the sales in a trait"};
    case Note::silent_sales:
      return {"silent-sales", "no sale tells these, so nothing was adjusted for them"};
    case Note::not_told:
      return {"not-told", "a trait of this reel is not determined and was not adjusted"};
    case Note::no_index:
      return {"no-price-index",
              "there is no price index of this currency: prices stand as they were paid"};
    case Note::estimated_index:
      break;
  }
  return {"estimated-index",
          "a figure of the price index is missing and was estimated by its rule"};
}

const char* word(Trait trait) {
  switch (trait) {
    case Trait::surface:
      return "surface";
    case Trait::structure:
      return "structure";
    case Trait::working:
      return "working";
    case Trait::completeness:
      return "completeness";
    case Trait::originality:
      return "originality";
    case Trait::box:
      break;
  }
  return "box";
}

std::string changed_words(Trait trait, const State& state) {
  const std::string name = word(trait);
  if (!state[trait]) return name + " not determined";
  const double at = *state[trait];
  if (trait == Trait::originality) return fmt::format("{} {:.0f} of 100", name, 100 - 10 * at);
  if (trait == Trait::box) return at == 0 ? "with its box" : "without a box";
  std::string words(knowledge::axis_word(name, static_cast<int>(at)));
  std::replace(words.begin(), words.end(), '-', ' ');
  return name + " " + words;
}

const char* word(StateFrom from) {
  switch (from) {
    case StateFrom::found:
      return "found";
    case StateFrom::left:
      return "left";
    case StateFrom::expected:
      break;
  }
  return "expected";
}

const char* spoken(record::Course course) {
  switch (course) {
    case record::Course::keep_as_found:
      return "keep it as found";
    case record::Course::clean_for_show:
      return "clean it for show";
    case record::Course::make_it_fish:
      return "make it fish";
    case record::Course::rebuild_to_fish:
      break;
  }
  return "rebuild it to fish";
}

const char* word(Basis basis) {
  switch (basis) {
    case Basis::hammer:
      return "hammer";
    case Basis::premium:
      return "premium";
    case Basis::asking:
      return "asking";
    case Basis::privately:
      return "private";
    case Basis::dealer:
      break;
  }
  return "dealer";
}

const char* word(assess::value::Method method) {
  using assess::value::Method;
  switch (method) {
    case Method::none:
      return "none";
    case Method::grid:
      return "grid";
    case Method::regression:
      break;
  }
  return "regression";
}

}  // namespace winchbook::answers
