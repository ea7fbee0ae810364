#include "app/person.h"

#include <fmt/format.h>

#include <utility>

namespace winchbook::app {

std::string add_person(Draft& draft, const PersonRequest& request) {
  const std::string called = request.short_name.empty()
                                 ? request.name.substr(0, request.name.find(' '))
                                 : request.short_name;
  std::string id = draft.free_id(called);
  const pugi::xml_node person = draft.add_with_id(draft.section("people"), "person", id);
  draft.add(person, "name", request.name);
  draft.add_if(person, "short-name", request.short_name);
  draft.add(person, "stand-in", request.stand_in);
  draft.add_words(person, "who", request.who);
  draft.add_if(person, "address", request.address);
  draft.add_if(person, "contact", request.contact);
  draft.add_if(person, "lived", request.lived);
  draft.add(person, "named-to", request.named_to);
  draft.add_if(person, "salt", request.salt);
  return id;
}

Change person(PersonRequest request) {
  return [request = std::move(request)](Draft& draft) -> base::Result<Said> {
    for (const record::Person& one : draft.record().people) {
      const std::string* name = record::told(one.name);
      if (name == nullptr || *name != request.name) continue;
      return base::error_at(
          draft.loaded().where(one.id.text),
          fmt::format("\"{}\" is in the record already, as \"{}\"", request.name, one.id.text),
          "give the full name that tells two people apart", "command-name");
    }
    const std::string id = add_person(draft, request);
    return Said{fmt::format("{} is in the record as \"{}\", named to {}", request.name, id,
                            request.named_to),
                {}};
  };
}

}  // namespace winchbook::app
