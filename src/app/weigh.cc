#include "app/weigh.h"

#include <utility>

#include "app/advise.h"
#include "app/value.h"

namespace winchbook::app {
namespace {

report::Worth worth_of(const Valued& valued) {
  report::Worth worth;
  worth.question = valued.question;
  worth.finding = valued.finding;
  worth.rules = valued.rules;
  worth.courses = valued.courses;
  worth.older = valued.older;
  worth.states = valued.states;
  return worth;
}

}  // namespace

base::Result<Weighed> weigh(const World& world, const IssueRequest& request,
                            const recordfile::LoadedRecord& shown,
                            const assess::Assessment& assessment) {
  Weighed weighed;
  if (record::last_visit(shown.record) == nullptr) return weighed;
  const ValueRequest asked{{}, request.value, request.date};
  auto valued = value(world, asked, shown, assessment);
  if (!valued) return valued.faults();
  if (request.with_value || !request.value.sales.empty()) weighed.worth = worth_of(*valued);
  auto advised = advise(std::move(valued).value(), assessment, {});
  if (!advised) return advised.faults();
  weighed.courses = std::move(advised.value().finding);
  return weighed;
}

}  // namespace winchbook::app
