#include "daybook/entries/mark.h"

#include <fmt/format.h>

#include <utility>

#include "daybook/open_visit.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

void add_end(Draft& draft, pugi::xml_node says, const char* name, const std::string& text) {
  if (text.empty()) return;
  const std::size_t space = text.rfind(' ');
  const bool told = space != std::string::npos;
  const pugi::xml_node end = draft.add(says, name);
  draft.add(end, "date", text.substr(0, space));
  draft.add(end, "firmness", told ? text.substr(space + 1) : "soft");
}

void add_says(Draft& draft, pugi::xml_node marking, const MarkRequest& request) {
  if (request.not_before.empty() && request.not_after.empty() && request.because.empty() &&
      request.source.empty()) {
    return;
  }
  const pugi::xml_node says = draft.add(marking, "says");
  add_end(draft, says, "not-before", request.not_before);
  add_end(draft, says, "not-after", request.not_after);
  draft.add_words(says, "because", request.because);
  draft.add_if(says, "source", request.source);
}

}  // namespace

Change mark(MarkRequest request) {
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
    const auto piece = record::find_piece(draft.record(), request.part);
    if (!piece) return piece.faults();
    std::string person;
    if (!request.person.empty()) {
      const auto found = record::find_person(draft.record(), request.person);
      if (!found) return found.faults();
      person = found.value()->id.text;
    }
    const auto id = draft.id_for(request.id, "mk-" + piece.value()->id.text);
    if (!id) return id.faults();
    const pugi::xml_node marking = draft.add_with_id(draft.section("markings"), "marking", *id);
    draft.add_ref(marking, "piece", piece.value()->id.text);
    draft.add_if(marking, "where", request.where);
    draft.add(marking, "text", request.text);
    draft.add(marking, "method", request.method);
    draft.add(marking, "whose", request.whose);
    draft.add(marking, "state", request.state);
    draft.add(marking, "legibility", request.legibility);
    if (!person.empty()) draft.add_ref(marking, "person", person);
    draft.add_if(marking, "claims", request.claims);
    draft.add_if(marking, "cut", request.cut);
    add_says(draft, marking, request);
    draft.add_words(marking, "note", request.note);
    if (auto faults = add_photos(draft, marking, request.photos); !faults.empty()) return faults;
    draft.add_if(marking, "salt", request.salt);
    if (request.serial) draft.set(draft.section("reel"), "serial", request.text);
    return Said{fmt::format("mark \"{}\" on {}: {}", request.text, piece.value()->name, *id), {}};
  };
}

}  // namespace winchbook::daybook
