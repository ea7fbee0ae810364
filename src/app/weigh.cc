#include "app/weigh.h"

#include <utility>

#include "answers/advise.h"

namespace winchbook::app {
namespace {

report::Worth worth_of(const answers::Valued& valued) {
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

base::Result<Weighed> weigh(library::Library& library, const answers::ValueRequest& asked,
                            bool told, const recordfile::LoadedRecord& shown,
                            const assess::Assessment& assessment) {
  Weighed weighed;
  if (record::last_visit(shown.record) == nullptr) return weighed;
  auto valued = answers::value(library, asked, shown, assessment);
  if (!valued) return valued.faults();
  if (told) weighed.worth = worth_of(*valued);
  auto advised = answers::advise(std::move(valued).value(), assessment, {});
  if (!advised) return advised.faults();
  weighed.courses = std::move(advised.value().finding);
  return weighed;
}

}  // namespace winchbook::app
