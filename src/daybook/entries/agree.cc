#include "daybook/entries/agree.h"

#include <fmt/format.h>

#include <utility>

#include "daybook/open_visit.h"
#include "daybook/sums.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

/// The first agreement that is surely later, to stand before it.
pugi::xml_node first_later(const Draft& draft, const OpenVisit& open, base::Day on) {
  for (const record::Agreement& one : open.visit->agreements) {
    const auto earliest = one.on.earliest();
    if (earliest && on < *earliest) return draft.by_id(one.id.text);
  }
  return {};
}

}  // namespace

base::Diagnostics add_agreement(Draft& draft, pugi::xml_node agreement,
                                const AgreeRequest& request) {
  base::Diagnostics faults;
  const auto add_parts = [&](const char* name, const std::vector<std::string>& said) {
    const auto pieces = record::find_pieces(draft.record(), said);
    if (!pieces) {
      faults.insert(faults.end(), pieces.faults().begin(), pieces.faults().end());
      return;
    }
    for (const record::Piece* piece : *pieces)
      draft.add_ref(agreement, name, piece->id.text);
  };
  draft.add(agreement, "on", base::iso_text(request.on));
  draft.add(agreement, "how", request.how);
  if (!request.with.empty()) draft.add_ref(agreement, "with", request.with);
  for (const std::string& one : request.may_be_done)
    draft.add_words(agreement, "may-be-done", one);
  for (const std::string& one : request.must_stay)
    draft.add_words(agreement, "must-stay", one);
  add_parts("piece-must-stay", request.parts_must_stay);
  add_parts("piece-may-leave", request.parts_may_leave);
  draft.add_if(agreement, "cost-limit", request.limit);
  if (!request.estimate.empty()) {
    const Sums sums = read_sums(request.estimate);
    const pugi::xml_node estimate = draft.add(agreement, "estimate");
    draft.add(estimate, "low", sums.low);
    draft.add_if(estimate, "high", sums.high);
  }
  draft.add_words(agreement, "note", request.note);
  return faults;
}

Change agree(AgreeRequest wanted) {
  return [wanted = std::move(wanted)](Draft& draft) -> base::Result<Said> {
    const auto open = open_visit(draft, wanted.on);
    if (!open) return open.faults();
    AgreeRequest request = wanted;
    if (!request.with.empty()) {
      const auto person = record::find_person(draft.record(), request.with);
      if (!person) return person.faults();
      request.with = person.value()->id.text;
    } else if (open->visit->brought_by) {
      request.with = open->visit->brought_by->text;
    }
    const auto id = draft.id_for(request.id, "ag-" + base::iso_text(request.on));
    if (!id) return id.faults();
    pugi::xml_node agreement;
    if (const pugi::xml_node later = first_later(draft, *open, request.on)) {
      agreement = Draft::add_before(later, "agreement");
      agreement.append_attribute("id") = id->c_str();
    } else {
      agreement = draft.add_with_id(open->element, "agreement", *id);
    }
    if (auto faults = add_agreement(draft, agreement, request); !faults.empty()) return faults;
    if (!request.promised_by.empty()) draft.set(open->element, "promised-by", request.promised_by);
    for (const std::string& one : request.waiting_for)
      draft.add(open->element, "waiting-for", one);
    return Said{fmt::format("agreed {} {}: {}", base::iso_text(request.on), request.how, *id), {}};
  };
}

}  // namespace winchbook::daybook
