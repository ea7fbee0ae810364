#include "daybook/entries/life.h"

#include <fmt/format.h>

#include <utility>

#include "daybook/open_visit.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

base::Diagnostics add_pieces(Draft& draft, pugi::xml_node event, const char* name,
                             const std::vector<std::string>& said) {
  const auto pieces = record::find_pieces(draft.record(), said);
  if (!pieces) return pieces.faults();
  for (const record::Piece* piece : *pieces)
    draft.add_ref(event, name, piece->id.text);
  return {};
}

}  // namespace

Change life_event(LifeRequest request) {
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
    const auto id = draft.id_for(request.id, "le-" + request.title);
    if (!id) return id.faults();
    const pugi::xml_node event = draft.add_with_id(draft.section("life"), "event", *id);
    draft.add(event, "kind", request.kind);
    draft.add(event, "title", request.title);
    draft.add_if(event, "date-as-told", request.as_told);
    draft.add_if(event, "date", request.date);
    if (!request.by.empty()) {
      const auto person = record::find_person(draft.record(), request.by);
      if (!person) return person.faults();
      draft.add_ref(event, "by", person.value()->id.text);
    }
    draft.add_paragraphs(draft.add(event, "what"), request.what);
    base::Diagnostics faults = add_pieces(draft, event, "piece", request.parts);
    if (!faults.empty()) return faults;
    draft.add(event, "source", request.source);
    draft.add_if(event, "certainty", request.certainty);
    draft.add_words(event, "keep-because", request.keep_because);
    faults = add_pieces(draft, event, "must-stay", request.must_stay);
    if (!faults.empty()) return faults;
    if (faults = add_photos(draft, event, request.photos); !faults.empty()) return faults;
    return Said{fmt::format("{} in its life: {}", request.kind, request.title), {}};
  };
}

}  // namespace winchbook::daybook
