#include "daybook/entries/agree.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "daybook/named_parts.h"
#include "daybook/open_visit.h"

namespace winchbook::daybook {
namespace {

forms::Form form(AgreeRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      id_field(request.id),
      field("--how", "in person, by letter, by telephone", request.how)
          .asks("How was it agreed: in person, by letter?"),
      field("--with", "with whom", request.with),
      field("--may-be-done", "what may be done; as often as needed", request.may_be_done),
      field("--must-stay", "what must stay, in words", request.must_stay),
      field("--part-must-stay", "a part that must stay fitted", request.parts_must_stay),
      field("--may-leave", "a part that the bench may keep or scrap", request.parts_may_leave),
      field("--limit", "what it may cost: \"180 GBP\"", request.limit),
      field("--estimate", "what the bench thinks it will cost: \"150 to 180 GBP\"",
            request.estimate),
      field("--note", "a note", request.note),
      field("--promised-by", "when the reel is promised", request.promised_by),
      field("--waiting-for", "what the work waits for", request.waiting_for),
  };
}

/// The day as the record holds it; the log is kept by it.
void put_in_log(std::vector<record::Agreement>& log, record::Agreement agreement, base::Day on) {
  const auto later = std::find_if(log.begin(), log.end(), [&](const record::Agreement& one) {
    const auto earliest = one.on.earliest();
    return earliest && on < *earliest;
  });
  log.insert(later, std::move(agreement));
}

}  // namespace

base::Result<record::Agreement> agreement_of(Draft& draft, const AgreeRequest& request,
                                             std::string_view wish) {
  const auto id = draft.id_for(request.id, wish);
  if (!id) return id.faults();
  base::Diagnostics faults;
  const auto add_parts = [&](const std::vector<std::string>& said,
                             std::vector<record::PieceId>& into) {
    const auto pieces = pieces_named(draft, said);
    if (!pieces) {
      faults.insert(faults.end(), pieces.faults().begin(), pieces.faults().end());
      return;
    }
    for (const record::Piece* piece : *pieces)
      into.push_back(piece->id);
  };
  record::Agreement agreement;
  agreement.id = {*id};
  agreement.on = date_of(request.on);
  agreement.how = request.how;
  const auto with = person_of(draft.record(), request.with);
  if (!with) return with.faults();
  agreement.with = *with;
  for (const std::string& one : request.may_be_done)
    agreement.may_be_done.push_back(draft.words(one));
  for (const std::string& one : request.must_stay)
    agreement.must_stay.push_back(draft.words(one));
  add_parts(request.parts_must_stay, agreement.pieces_must_stay);
  add_parts(request.parts_may_leave, agreement.pieces_may_leave);
  agreement.cost_limit = request.limit;
  if (request.estimate) {
    agreement.estimate_low = request.estimate->low;
    agreement.estimate_high = request.estimate->high;
  }
  agreement.note = draft.words(request.note);
  if (!faults.empty()) return faults;
  return agreement;
}

base::Result<Said> agree(const AgreeRequest& request, Draft& draft) {
  const auto open = open_visit(draft, request.on);
  if (!open) return open.faults();
  record::Visit& visit = **open;
  auto agreement = agreement_of(draft, request, "ag-" + base::iso_text(request.on));
  if (!agreement) return agreement.faults();
  std::string sentence =
      fmt::format("agreed {} {}: {}", base::iso_text(request.on), request.how, agreement->id.text);
  put_in_log(visit.agreements, std::move(agreement).value(), request.on);
  set_if(visit.promised_by, request.promised_by);
  visit.waiting_for.insert(visit.waiting_for.end(), request.waiting_for.begin(),
                           request.waiting_for.end());
  return Said{std::move(sentence), {}};
}

forms::Job agree_job() {
  return entry_job<AgreeRequest>(form, agree);
}

}  // namespace winchbook::daybook
