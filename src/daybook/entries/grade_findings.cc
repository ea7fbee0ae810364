#include <fmt/format.h>

#include <utility>

#include "daybook/entries/grade_set.h"
#include "daybook/open_visit.h"
#include "record/enum_words.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

/// The finding of this name; added when there is none.
pugi::xml_node named_finding(Draft& draft, pugi::xml_node findings, const char* element,
                             const std::string& name) {
  for (const pugi::xml_node one : findings.children(element)) {
    if (name == one.child("name").text().get()) return one;
  }
  const pugi::xml_node added =
      std::string_view(element) == "fault"
          ? draft.add_with_id(findings, element, draft.free_id("fa-" + name))
          : draft.add(findings, element);
  return added;
}

void set_if(Draft& draft, pugi::xml_node parent, const char* name, const std::string& text) {
  if (!text.empty()) draft.set(parent, name, text);
}

bool points_at(pugi::xml_node parent, const char* name, const std::string& id) {
  for (const pugi::xml_node one : parent.children(name)) {
    if (id == one.attribute("ref").value()) return true;
  }
  return false;
}

}  // namespace

Change add_fault(FaultRequest request) {
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
    const auto open = open_visit(draft, request.on);
    if (!open) return open.faults();
    const pugi::xml_node findings = draft.need(open->element, "findings");
    const pugi::xml_node fault = named_finding(draft, findings, "fault", request.name);
    if (!request.part.empty()) {
      const auto piece = record::find_piece(draft.record(), request.part);
      if (!piece) return piece.faults();
      if (!fault.child("piece")) draft.add_ref(fault, "piece", piece.value()->id.text);
    }
    draft.set(fault, "kind", request.kind);
    draft.set(fault, "name", request.name);
    set_if(draft, fault, "size", request.size);
    set_if(draft, fault, "found", request.found);
    set_if(draft, fault, "left", request.left);
    draft.set_words(fault, "what", request.what);
    draft.set_words(fault, "why-it-stays", request.why_it_stays);
    if (auto faults = add_photos(draft, fault, request.photos); !faults.empty()) return faults;
    const auto told = [&](const char* half, const char* none) {
      const std::string text = fault.child(half).text().get();
      return text.empty() ? std::string(none) : text;
    };
    return Said{fmt::format("fault: {} ({} as found, {} as left)", request.name,
                            told("found", "not there"), told("left", "put right")),
                {}};
  };
}

Change set_place_grade(PlaceGradeRequest request) {
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
    const auto open = open_visit(draft, request.on);
    if (!open) return open.faults();
    const auto place = record::find_place(draft.record(), request.place);
    if (!place) return place.faults();
    const std::string word = request.filled == "filled"         ? "yes"
                             : request.filled == "in part"      ? "in-part"
                             : request.filled == "not examined" ? "not-examined"
                                                                : request.filled;
    if (!record::value_of<record::Filled>(word)) {
      return base::of_command(
          base::of_command(base::error(fmt::format("\"{}\" says nothing of a place", request.filled),
                      "say filled, in part, empty or not examined", "command-grade")));
    }
    const pugi::xml_node findings = draft.need(open->element, "findings");
    pugi::xml_node finding;
    for (const pugi::xml_node one : findings.children("place-finding")) {
      if (points_at(one, "place", place.value()->id.text)) finding = one;
    }
    if (!finding) {
      finding = draft.add(findings, "place-finding");
      draft.add_ref(finding, "place", place.value()->id.text);
      for (const char* half : {"found", "left"})
        draft.add(finding, half, "not-examined");
    }
    draft.set(finding, request.left ? "left" : "found", word);
    draft.set_words(finding, "note", request.note);
    return Said{fmt::format("place {} {}: {}", place.value()->name,
                            request.left ? "as left" : "as found", request.filled),
                {}};
  };
}

Change add_flag(FlagRequest request) {
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
    const auto open = open_visit(draft, request.on);
    if (!open) return open.faults();
    const auto pieces = record::find_pieces(draft.record(), request.parts);
    if (!pieces) return pieces.faults();
    const pugi::xml_node findings = draft.need(open->element, "findings");
    const pugi::xml_node flag = named_finding(draft, findings, "flag", request.name);
    draft.set(flag, "kind", request.kind);
    draft.set(flag, "name", request.name);
    draft.set_words(flag, "what", request.what);
    for (const record::Piece* piece : *pieces) {
      if (!points_at(flag, "piece", piece->id.text)) draft.add_ref(flag, "piece", piece->id.text);
    }
    return Said{fmt::format("{}: {}", request.kind, request.name), {}};
  };
}

Change set_findings_note(base::Day on, std::string note) {
  return [on, note = std::move(note)](Draft& draft) -> base::Result<Said> {
    const auto open = open_visit(draft, on);
    if (!open) return open.faults();
    draft.set_words(draft.need(open->element, "findings"), "note", note);
    return Said{"the findings have their note", {}};
  };
}

}  // namespace winchbook::daybook
