#include "daybook/entries/person.h"

#include <fmt/format.h>

#include <utility>

#include "record/enum_words.h"
#include "record/find_named.h"

namespace winchbook::daybook {
namespace {

forms::Form form(PersonRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      field("NAME", "the full name; with --known, as you call them", request.name)
          .asks("What is the full name?"),
      id_field(request.id),
      flag("--known", "they are in the record: set what is given", request.known),
      field("--short", "how the family calls them", request.short_name),
      field("--stand-in", "printed where the name is withheld: \"the first owner\"",
            request.stand_in)
          .asks("What is printed where the name is withheld?",
                [&request] { return !request.known; }),
      field("--who", "who they are to the reel", request.who),
      field("--address", "where they live", request.address),
      field("--contact", "how to reach them", request.contact),
      field("--lived", "from birth to death: 1911/1983", request.lived),
      field("--named-to", "who may read the name: anyone, insurer or owner (left out, owner)",
            request.named_to),
  };
}

base::Diagnostics draw_salt(PersonRequest& request, forms::Setting& setting) {
  request.salt = setting.library.world().draw_salt();
  return {};
}

/// All but the name itself.
void set_given(record::Person& person, const Draft& draft, const PersonRequest& request) {
  set_if(person.short_name, request.short_name);
  set_if(person.stand_in, request.stand_in);
  draft.put(person.who, request.who);
  if (!request.address.empty()) person.address = request.address;
  if (!request.contact.empty()) person.contact = request.contact;
  set_if(person.lived, request.lived);
  set_if(person.named_to, request.named_to);
}

base::Result<Said> set_known(const PersonRequest& request, Draft& draft) {
  const auto found = record::find_person(draft.record(), request.name);
  if (!found) return found.faults();
  record::Person& person = to_change(draft.record().people, *found);
  set_given(person, draft, request);
  return Said{fmt::format("{}: what is known of them is set", person.id.text), {}};
}

}  // namespace

base::Result<std::string> add_person(Draft& draft, const PersonRequest& request) {
  const std::string called = request.short_name.empty()
                                 ? request.name.substr(0, request.name.find(' '))
                                 : request.short_name;
  auto id = draft.id_for(request.id, called);
  if (!id) return id.faults();
  record::Person person;
  person.id = {*id};
  person.name = request.name;
  person.salt = request.salt;
  set_given(person, draft, request);
  draft.record().people.push_back(std::move(person));
  return id;
}

base::Result<Said> person(const PersonRequest& request, Draft& draft) {
  if (request.known) return set_known(request, draft);
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
                          record::word_of(request.named_to.value_or(record::NamedTo::owner))),
              {}};
}

forms::Job person_job() {
  return entry_job<PersonRequest>(form, person, draw_salt);
}

}  // namespace winchbook::daybook
