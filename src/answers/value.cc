#include "answers/value.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <utility>

#include "answers/assessed.h"
#include "answers/sales.h"

namespace winchbook::answers {
namespace {

namespace condition = assess::condition;
using assess::value::Basis;
using assess::value::CourseState;
using assess::value::Sale;
using assess::value::State;
using assess::value::StateFrom;
using assess::value::Trait;

/// The word of an axis as a number; empty while it is open between several.
std::optional<double> told(const condition::WordRange& word) {
  if (word.best != word.worst) return std::nullopt;
  return word.best;
}

/// Tens of points below a hundred, from the middle of a range that is narrow enough to be told.
std::optional<double> tens_lost(const std::optional<base::RatioRange>& born_here) {
  constexpr std::int64_t kTenPoints = 1000;
  constexpr std::int64_t kSteps = 10000;
  if (!born_here) return std::nullopt;
  const std::int64_t low = born_here->low.rounded(kSteps);
  const std::int64_t high = born_here->high.rounded(kSteps);
  if (high - low > kTenPoints) return std::nullopt;
  return (kSteps - static_cast<double>(low + high) / 2) / kTenPoints;
}

/// Whether a box is among what came with it.
double box_of(const record::Record& record) {
  const bool boxed =
      std::any_of(record.pieces.begin(), record.pieces.end(), [](const record::Piece& piece) {
        return piece.role == record::PieceRole::content &&
               piece.name.find("ox") != std::string::npos &&
               piece.born_here.answer == record::BornHere::yes;
      });
  return boxed ? 0 : 1;
}

State state_of(const record::Record& record, const condition::Readings& readings,
               const std::optional<base::RatioRange>& born_here) {
  State state;
  state[Trait::surface] = told(readings.surface.word);
  state[Trait::structure] = told(readings.structure.word);
  state[Trait::working] = told(readings.working.word);
  state[Trait::completeness] = told(readings.completeness.word);
  state[Trait::originality] = tens_lost(born_here);
  state[Trait::box] = box_of(record);
  return state;
}

Basis basis_of(const record::Sale& sale) {
  switch (sale.kind) {
    case record::SaleKind::auction:
      return sale.with_premium ? Basis::premium : Basis::hammer;
    case record::SaleKind::dealer:
      return Basis::dealer;
    case record::SaleKind::asking_price:
      return Basis::asking;
    case record::SaleKind::private_sale:
    case record::SaleKind::other:
      break;
  }
  return Basis::privately;
}

/// The sales of the record itself, told as sales of this model.
std::vector<Sale> recorded_sales(const record::Record& record) {
  std::vector<Sale> sales;
  if (!record.value) return sales;
  for (const record::Sale& one : record.value->sales) {
    Sale sale;
    sale.date = one.on;
    sale.price = one.price;
    sale.basis = basis_of(one);
    sale.maker = record.reel.maker.name;
    sale.model = record.reel.model;
    sale.state[Trait::box] = one.box ? 0 : 1;
    if (one.originality) {
      sale.state[Trait::originality] = (100 - one.originality->value.approximate()) / 10;
    }
    sale.notes = one.state;
    sale.source = one.source;
    if (!one.used && one.kind != record::SaleKind::asking_price) {
      sale.not_used = plain_text(record, one.excluded_because);
      if (sale.not_used.empty()) sale.not_used = "no reason given";
    }
    sales.push_back(std::move(sale));
  }
  return sales;
}

std::string most_frequent_currency(const std::vector<Sale>& sales) {
  std::map<std::string, int> counts;
  for (const Sale& sale : sales)
    ++counts[sale.price.currency];
  const auto most =
      std::max_element(counts.begin(), counts.end(),
                       [](const auto& a, const auto& b) { return a.second < b.second; });
  return most == counts.end() ? std::string() : most->first;
}

std::string purposes(const knowledge::Prices& prices) {
  std::string names;
  for (const knowledge::Purpose& one : prices.rules.purposes)
    names += (names.empty() ? "" : ", ") + one.name;
  return names;
}

base::Result<SalesRead> sales_for(const library::World& world, const ValueRequest& request,
                                  const record::Record& record, int most) {
  if (request.terms.sales.empty()) return SalesRead{recorded_sales(record), 0};
  const std::string maker = assess::value::folded_name(record.reel.maker.name);
  const std::string model = assess::value::folded_name(record.reel.model);
  const auto wants = [&](std::string_view their_maker, std::string_view their_model) {
    return assess::value::folded_name(their_model) == model &&
           assess::value::folded_name(their_maker) == maker;
  };
  return read_sales(world, request.terms.sales, request.today, wants,
                    static_cast<std::size_t>(most));
}

/// The states that stand for the four courses; those that are only expected go to `expected`.
std::vector<CourseState> course_states(const record::Visit& visit, const State& found,
                                       const State& left, const knowledge::Courses& courses,
                                       std::vector<State>& expected) {
  using record::Course;
  std::vector<CourseState> states;
  for (const Course course : {Course::keep_as_found, Course::clean_for_show, Course::make_it_fish,
                              Course::rebuild_to_fish}) {
    if (visit.hand_back && visit.advice && visit.advice->chosen == course) {
      states.push_back({course, StateFrom::left, left, 1});
      continue;
    }
    const State then = expected_state(found, course, courses);
    if (course == Course::keep_as_found || changes(found, then).empty()) {
      states.push_back({course, StateFrom::found, found, 0});
      continue;
    }
    states.push_back({course, StateFrom::expected, then, expected.size()});
    expected.push_back(then);
  }
  return states;
}

}  // namespace

base::Result<Valued> value(const library::World& world, const ValueRequest& request) {
  auto loaded = recordfile::read(world.files, request.record, world.data / "schemas");
  if (!loaded) return loaded.faults();
  const auto found = assessed(world, loaded->record);
  if (!found) return found.faults();
  return value(world, request, std::move(loaded).value(), found->assessment);
}

base::Result<Valued> value(const library::World& world, const ValueRequest& request,
                           recordfile::LoadedRecord loaded, const assess::Assessment& assessment) {
  const record::Record& record = loaded.record;
  const auto prices = knowledge::load_prices(world.files, world.data, request.terms.prices);
  if (!prices) return prices.faults();
  auto courses = knowledge::load_courses(world.files, world.data);
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
  const auto read = sales_for(world, request, record, prices->rules.most);
  if (!read) return read.faults();
  const std::vector<Sale>& sales = read->sales;

  Valued valued;
  valued.older = read->older;
  valued.question = {record.reel.maker.name, record.reel.model, terms.currency, as_of, *purpose};
  if (valued.question.currency.empty() && record.value) {
    valued.question.currency = record.value->currency;
  }
  if (valued.question.currency.empty()) {
    valued.question.currency = most_frequent_currency(sales);
  }
  std::vector<State> states;
  std::vector<State> expected;
  if (const assess::VisitAssessment* last = assessment.last()) {
    const auto& born = last->originality.born_here;
    valued.states.push_back(
        {ValuedState::Kind::found, state_of(record, last->condition.found, born.found)});
    valued.states.push_back(
        {ValuedState::Kind::left, state_of(record, last->condition.left, born.left)});
    valued.courses = course_states(*last_visit(record), valued.states[0].state,
                                   valued.states[1].state, *courses, expected);
  }
  for (const ValuedState& one : valued.states)
    states.push_back(one.state);
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
