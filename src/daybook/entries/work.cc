#include "daybook/entries/work.h"

#include <fmt/format.h>

#include <utility>

#include "daybook/limits.h"
#include "daybook/open_visit.h"
#include "record/find_named.h"

namespace winchbook::daybook {

Change work(WorkRequest request) {
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
    const auto open = open_visit(draft, request.on);
    if (!open) return open.faults();
    const auto pieces = record::find_pieces(draft.record(), request.parts);
    if (!pieces) return pieces.faults();
    std::string by;
    if (!request.by.empty()) {
      const auto person = record::find_person(draft.record(), request.by);
      if (!person) return person.faults();
      by = person.value()->id.text;
    } else if (!draft.record().bench.restorers.empty()) {
      by = draft.record().bench.restorers.front().text;
    }
    base::Diagnostics limits =
        limits_broken(draft, *open->visit, {*pieces, request.what, false}, request.agreed);
    if (base::has_error(limits)) return limits;
    const pugi::xml_node work = draft.add(open->element, "work");
    draft.add_words(work, "what", request.what);
    for (const record::Piece* piece : *pieces)
      draft.add_ref(work, "piece", piece->id.text);
    if (!by.empty()) draft.add_ref(work, "by", by);
    draft.add(work, "on",
              base::iso_text(request.on) + (request.until.empty() ? "" : "/" + request.until));
    draft.add_if(work, "hours", request.hours);
    draft.add_if(work, "parts-cost", request.parts_cost);
    add_way_back(draft, work, request.way_back);
    add_caution(draft, work, request.caution, "Work");
    std::string sentence = "work: " + request.what;
    if (!request.hours.empty()) sentence += fmt::format(" ({} h)", request.hours);
    return Said{std::move(sentence), std::move(limits)};
  };
}

}  // namespace winchbook::daybook
