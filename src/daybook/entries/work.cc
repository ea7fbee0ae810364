#include "daybook/entries/work.h"

#include <fmt/format.h>

#include <utility>

#include "daybook/hazards.h"
#include "daybook/limits.h"
#include "daybook/named_parts.h"
#include "daybook/open_visit.h"

namespace winchbook::daybook {
namespace {

forms::Form form(WorkRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      field("WHAT", "what was done, in a sentence", request.what).asks("What was done?"),
      field("--part", "a part it was done to", request.parts),
      field("--by", "who did it", request.by),
      field("--hours", "how long it took", request.hours),
      field("--parts-cost", "what was bought for it: \"4.20 GBP\"", request.parts_cost),
      done_already_field(request.done_already),
      agreed_field(request.agreed),
      field("--until", "its last day, when it took several", request.until),
      field("--way-back", "how far it can be undone: \"fully: It wipes off.\"", request.way_back),
      field("--caution", "a caution beside it: \"Solvent: open air, no flame\"", request.caution),
  };
}

base::Result<base::EdtfDate> days_of(const WorkRequest& request) {
  if (!request.until) return date_of(request.on);
  if (*request.until >= request.on) {
    return base::EdtfDate::parse(base::iso_text(request.on) + "/" + base::iso_text(*request.until));
  }
  return base::of_command(
      base::error(fmt::format("its last day {} is before its first {}",
                              base::iso_text(*request.until), base::iso_text(request.on)),
                  "correct --until, or the day given with --on", "command-day"));
}

}  // namespace

base::Result<Said> work(const WorkRequest& request, Draft& draft) {
  const auto open = open_visit(draft, request.on);
  if (!open) return open.faults();
  record::Visit& visit = **open;
  const auto pieces = pieces_named(draft, request.parts);
  if (!pieces) return pieces.faults();
  const auto by = person_of(draft.record(), request.by);
  if (!by) return by.faults();
  const auto days = days_of(request);
  if (!days) return days.faults();
  record::Work work;
  for (const record::Piece* piece : *pieces)
    work.pieces.push_back(piece->id);
  base::Diagnostics warnings =
      hazards_in(draft, visit, {work.pieces, request.what, request.done_already});
  if (base::has_error(warnings)) return warnings;
  const auto limits = limits_broken(draft, visit, {*pieces, request.what, false}, request.agreed);
  warnings.insert(warnings.end(), limits.begin(), limits.end());
  if (base::has_error(warnings)) return warnings;

  work.what = draft.words(request.what);
  work.by = *by;
  work.on = *days;
  work.hours = request.hours;
  work.parts_cost = request.parts_cost;
  if (request.way_back) work.way_back = way_back_of(draft, *request.way_back);
  if (request.caution) work.caution = caution_of(draft, *request.caution, "Work");
  visit.work.push_back(std::move(work));
  std::string sentence = "work: " + request.what;
  if (request.hours) sentence += fmt::format(" ({} h)", request.hours->value.text());
  return Said{std::move(sentence), std::move(warnings)};
}

forms::Job work_job() {
  return entry_job<WorkRequest>(form, work);
}

}  // namespace winchbook::daybook
