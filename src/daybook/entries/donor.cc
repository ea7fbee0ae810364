#include "daybook/entries/donor.h"

#include <fmt/format.h>

#include <utility>

namespace winchbook::daybook {

base::Result<std::string> add_donor(Draft& draft, const DonorRequest& request) {
  auto id = draft.id_for(request.id, "donor-" + request.name);
  if (!id) return id.faults();
  const pugi::xml_node donor = draft.add_with_id(draft.section("donors"), "donor", *id);
  draft.add(donor, "name", request.name);
  draft.add(donor, "same-maker", request.same_maker ? "yes" : "no");
  draft.add_words(donor, "note", request.note);
  draft.add_if(donor, "acquired", request.acquired);
  draft.add_if(donor, "cost", request.cost);
  return id;
}

Change donor(DonorRequest request) {
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
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
  };
}

}  // namespace winchbook::daybook
