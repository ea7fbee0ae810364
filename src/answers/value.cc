#include "answers/value.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "answers/assessed.h"
#include "assess/value/recorded_sales.h"
#include "knowledge/sales.h"

namespace winchbook::answers {
namespace {

using assess::ValuedState;
using assess::value::Sale;
using assess::value::State;
using knowledge::SalesRead;

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
  return knowledge::read_sales(library.source(),
                               {request.terms.sales, request.today, words::is_currency}, wants,
                               static_cast<std::size_t>(most));
}

forms::Form form(ValueRequest& request) {
  return value_form(request, "the answer as JSON (schemas/value.schema.json)");
}

base::Result<forms::Outcome> run(const ValueRequest& request, forms::Setting& setting) {
  const auto valued = value(setting.library, request);
  if (!valued) return valued.faults();
  if (request.json) return forms::Outcome{value_as_json(*valued), {}, {}};
  return tell(setting, valued->loaded.record.language,
              [&](const words::Catalogue& words) { return value_told(*valued, words); });
}

}  // namespace

base::Result<Valued> value(library::Library& library, const ValueRequest& request) {
  auto loaded = library.record(request.record);
  if (!loaded) return loaded.faults();
  const auto found = assessed(library, loaded->record);
  if (!found) return found.faults();
  return value(library, request, std::move(loaded).value(), *found);
}

base::Result<Valued> value(library::Library& library, const ValueRequest& request,
                           recordfile::LoadedRecord loaded, const assess::Assessment& assessment) {
  const record::Record& record = loaded.record;
  const auto prices = library.prices(request.terms.prices);
  if (!prices) return prices.faults();
  const auto courses = library.courses();
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
  valued.question = {record.reel.maker.name, record.reel.model, terms.currency.code, as_of,
                     *purpose};
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
    valued.courses = assess::value::course_states(*visit, states.front(), states.back(), **courses);
    expected = expected_states(valued.courses);
  }
  valued.finding = assess::value::value(valued.question, states, sales, *prices, expected);
  valued.rules = prices->rules;
  valued.bench = *courses;
  valued.loaded = std::move(loaded);
  return valued;
}

std::string price_text(double amount, RoundPrice how) {
  return fmt::format("{:.0f}", assess::value::rounded_price(amount, how));
}

forms::Form value_form(ValueRequest& request, std::string_view json_help) {
  using namespace forms;  // NOLINT: a form is written in its words
  Form form{field("PATH", "the reel's folder, or its record.xml", request.record).must(),
            today(request.today)};
  append(form, valuing_form(request.terms, "those in the record", "today"));
  form.push_back(flag("--json", std::string(json_help), request.json));
  return form;
}

forms::Job value_job() {
  return forms::job_of(form, run);
}

}  // namespace winchbook::answers
