#pragma once

#include <string>

#include "daybook/edit.h"

namespace winchbook::daybook {

/// Somebody in the reel's life.
struct PersonRequest {
  std::string id;      ///< empty: made from the short name, or the first of the names
  bool known = false;  ///< they are in the record, `name` as they are named: what is given is set
  std::string name;
  std::string short_name;
  std::string stand_in;  ///< printed where the name is withheld
  std::string who;
  std::string address;
  std::string contact;
  std::string lived;
  std::string named_to;  ///< empty: owner
  std::string salt;      ///< 32 hexadecimal digits drawn at random
};

/// Adds the person, or sets what is given of one who is known.
[[nodiscard]] Change person(PersonRequest request);

/// Adds one to the people of a draft and gives the id. Error: something has the id already.
[[nodiscard]] base::Result<std::string> add_person(Draft& draft, const PersonRequest& request);

}  // namespace winchbook::daybook
