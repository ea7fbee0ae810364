#pragma once

#include <optional>
#include <string>

#include "daybook/entry.h"
#include "record/people.h"

namespace winchbook::daybook {

/// Somebody in the reel's life.
struct PersonRequest : Entry {
  std::string id;      ///< empty: made from the short name, or the first of the names
  bool known = false;  ///< they are in the record, `name` as they are named: what is given is set
  std::string name;
  std::string short_name;
  std::string stand_in;  ///< printed where the name is withheld
  std::string who;
  std::string address;
  std::string contact;
  std::optional<base::EdtfDate> lived;
  std::optional<record::NamedTo> named_to;  ///< empty: owner
  std::string salt;                         ///< 32 hexadecimal digits drawn at random
};

/// Adds the person, or sets what is given of one who is known.
[[nodiscard]] base::Result<Said> person(const PersonRequest& request, Draft& draft);

/// Adds one to the people of a draft and gives the id. Error: something has the id already.
[[nodiscard]] base::Result<std::string> add_person(Draft& draft, const PersonRequest& request);

[[nodiscard]] forms::Job person_job();

}  // namespace winchbook::daybook
