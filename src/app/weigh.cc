#include "app/weigh.h"

#include <utility>

#include "app/advise.h"
#include "app/value.h"

namespace winchbook::app {
namespace {

report::Worth worth_of(const Valued& valued) {
  report::Worth worth{valued.question, {}, valued.finding, valued.rules};
  for (const ValuedState& one : valued.states) {
    worth.states.push_back(one.kind == ValuedState::Kind::found ? report::Worth::State::found
                                                                : report::Worth::State::left);
  }
  return worth;
}

}  // namespace

base::Result<Weighed> weigh(const World& world, const IssueRequest& request,
                            const recordfile::LoadedRecord& shown) {
  Weighed weighed;
  if (record::last_visit(shown.record) == nullptr) return weighed;
  ValueRequest asked;
  asked.sales = request.sales;
  asked.as_of = request.valued_on.value_or(request.date);
  asked.today = request.date;
  asked.currency = request.currency;
  if (!request.purpose.empty()) asked.purpose = request.purpose;
  auto valued = value(world, asked, shown);
  if (!valued) return valued.faults();
  if (request.document == "value-statement" || !request.sales.empty()) {
    weighed.worth = worth_of(*valued);
  }
  auto advised = advise(world, std::move(valued).value(), {});
  if (!advised) return advised.faults();
  weighed.courses = std::move(advised.value().finding);
  return weighed;
}

}  // namespace winchbook::app
