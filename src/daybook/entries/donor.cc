#include "daybook/entries/donor.h"

#include <fmt/format.h>

#include "daybook/open_visit.h"

namespace winchbook::daybook {
namespace {

forms::Form form(DonorRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      field("NAME", "what it is: \"a broken Skerry No. 30\"", request.name)
          .asks("What gives the parts (\"a broken Skerry No. 30\")?"),
      id_field(request.id),
      flag("--same-maker", "it is by the reel's own maker", request.same_maker),
      field("--note", "where it came from, what is left of it", request.note),
      field("--cost", "what it cost: \"35 GBP\"", request.cost),
  };
}

}  // namespace

base::Result<std::string> add_donor(Draft& draft, const DonorRequest& request) {
  auto id = draft.id_for(request.id, "donor-" + request.name);
  if (!id) return id.faults();
  draft.record().donors.push_back({{*id},
                                   request.name,
                                   request.same_maker,
                                   draft.words(request.note),
                                   date_of(request.on),
                                   request.cost});
  return id;
}

base::Result<Said> donor(const DonorRequest& request, Draft& draft) {
  for (const record::Donor& one : draft.record().donors) {
    if (one.name != request.name) continue;
    return base::of_command(base::error_at(
        draft.loaded().where(one.id.text),
        fmt::format("\"{}\" is in the record already, as \"{}\"", request.name, one.id.text),
        "name what tells the two apart", "command-name"));
  }
  const auto id = add_donor(draft, request);
  if (!id) return id.faults();
  return Said{fmt::format("donor \"{}\": {}", *id, request.name), {}};
}

forms::Job donor_job() {
  return entry_job<DonorRequest>(form, donor);
}

}  // namespace winchbook::daybook
