#include <fmt/format.h>

#include <algorithm>

#include "daybook/entries/grade_set.h"
#include "daybook/named_parts.h"
#include "daybook/open_visit.h"
#include "record/enum_words.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

/// The finding of this name; added when there is none.
template <class Finding> Finding& named(std::vector<Finding>& all, const std::string& name) {
  const auto there =
      std::find_if(all.begin(), all.end(), [&](const Finding& one) { return one.name == name; });
  if (there != all.end()) return *there;
  Finding fresh;
  fresh.name = name;
  return all.emplace_back(std::move(fresh));
}

template <class Value> std::string told(const std::optional<Value>& severity, const char* none) {
  return severity ? std::string(record::word_of(*severity)) : none;
}

}  // namespace

base::Result<Said> add_fault(const GradeRequest& request, Draft& draft) {
  if (request.parts.size() > 1) {
    return base::of_command(base::error("a fault is of one part, or of the reel as a whole",
                                        "name one part", "command-parts"));
  }
  const auto open = open_visit(draft, request.on);
  if (!open) return open.faults();
  const auto pieces = pieces_named(draft, request.parts);
  if (!pieces) return pieces.faults();
  const auto photos = photos_of(draft.record(), request.evidence.photos);
  if (!photos) return photos.faults();
  const std::string id = draft.free_id("fa-" + request.fault_name);
  record::Fault& fault = named(open.value()->findings.faults, request.fault_name);
  if (fault.id.empty()) fault.id = {id};
  if (!pieces->empty() && !fault.piece) fault.piece = pieces->front()->id;
  fault.kind = *request.fault;
  if (request.size) fault.size = request.size;
  if (request.found_severity) {
    fault.found = request.found_severity;
    fault.on = date_of(request.on);
  }
  if (request.left_severity) {
    fault.as_left = request.left_severity;
    fault.left_on = date_of(request.on);
  }
  draft.put(fault.what, request.what);
  draft.put(fault.why_it_stays, request.stays_because);
  fault.photos.insert(fault.photos.end(), photos->begin(), photos->end());
  return Said{fmt::format("fault: {} ({} as found, {} as left)", fault.name,
                          told(fault.found, "not seen"), told(fault.as_left, "not looked at")),
              {}};
}

base::Result<Said> set_place_grade(const GradeRequest& request, Draft& draft) {
  const auto open = open_visit(draft, request.on);
  if (!open) return open.faults();
  const auto place = record::find_place(draft.record(), request.place);
  if (!place) return place.faults();
  if (!request.said.filled) {
    return base::of_command(
        base::error(fmt::format("\"{}\" says nothing of a place", request.said.typed),
                    "say filled, in part, empty or not examined", "command-grade"));
  }
  record::PlaceFinding& finding = finding_of(**open, place.value()->id);
  finding.on = date_of(request.on);
  (request.left ? finding.left : finding.found) = *request.said.filled;
  draft.put(finding.note, request.note);
  return Said{fmt::format("place {} {}: {}", place.value()->name,
                          request.left ? "as left" : "as found", request.said.typed),
              {}};
}

base::Result<Said> add_flag(const GradeRequest& request, Draft& draft) {
  const auto open = open_visit(draft, request.on);
  if (!open) return open.faults();
  const auto pieces = pieces_named(draft, request.parts);
  if (!pieces) return pieces.faults();
  record::Flag& flag = named(open.value()->findings.flags, request.flag_name);
  flag.kind = *request.flag;
  flag.on = date_of(request.on);
  draft.put(flag.what, request.what);
  for (const record::Piece* piece : *pieces) {
    if (std::find(flag.pieces.begin(), flag.pieces.end(), piece->id) == flag.pieces.end()) {
      flag.pieces.push_back(piece->id);
    }
  }
  return Said{fmt::format("{}: {}", record::word_of(flag.kind), flag.name), {}};
}

}  // namespace winchbook::daybook
