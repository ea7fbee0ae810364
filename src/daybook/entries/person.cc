#include "daybook/entries/person.h"

#include <fmt/format.h>

#include <utility>

#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

base::Result<Said> set_known(Draft& draft, const PersonRequest& request) {
  const auto found = record::find_person(draft.record(), request.name);
  if (!found) return found.faults();
  const std::string id = found.value()->id.text;
  const pugi::xml_node person = draft.by_id(id);
  for (const auto& [name, text] :
       {std::pair{"short-name", &request.short_name}, std::pair{"stand-in", &request.stand_in},
        std::pair{"address", &request.address}, std::pair{"contact", &request.contact},
        std::pair{"lived", &request.lived}, std::pair{"named-to", &request.named_to}}) {
    if (!text->empty()) draft.set(person, name, *text);
  }
  draft.set_words(person, "who", request.who);
  return Said{fmt::format("{}: what is known of them is set", id), {}};
}

}  // namespace

base::Result<std::string> add_person(Draft& draft, const PersonRequest& request) {
  const std::string called = request.short_name.empty()
                                 ? request.name.substr(0, request.name.find(' '))
                                 : request.short_name;
  auto id = draft.id_for(request.id, called);
  if (!id) return id.faults();
  const pugi::xml_node person = draft.add_with_id(draft.section("people"), "person", *id);
  draft.add(person, "name", request.name);
  draft.add_if(person, "short-name", request.short_name);
  draft.add(person, "stand-in", request.stand_in);
  draft.add_words(person, "who", request.who);
  draft.add_if(person, "address", request.address);
  draft.add_if(person, "contact", request.contact);
  draft.add_if(person, "lived", request.lived);
  draft.add(person, "named-to", request.named_to.empty() ? "owner" : request.named_to);
  draft.add_if(person, "salt", request.salt);
  return id;
}

Change person(PersonRequest request) {
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
    if (request.known) return set_known(draft, request);
    for (const record::Person& one : draft.record().people) {
      const std::string* name = record::told(one.name);
      if (name == nullptr || *name != request.name) continue;
      return base::of_command(base::error_at(
          draft.loaded().where(one.id.text),
          fmt::format("\"{}\" is in the record already, as \"{}\"", request.name, one.id.text),
          "give the full name that tells two people apart, or say --known to set what is given",
          "command-name"));
    }
    const auto id = add_person(draft, request);
    if (!id) return id.faults();
    return Said{fmt::format("{} is in the record as \"{}\", named to {}", request.name, *id,
                            request.named_to.empty() ? "owner" : request.named_to),
                {}};
  };
}

}  // namespace winchbook::daybook
