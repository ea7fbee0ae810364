#pragma once

#include <optional>
#include <string>
#include <vector>

#include "daybook/entry.h"
#include "record/people.h"

namespace winchbook::daybook {

/// Something that happened to the reel between its maker and this bench.
struct LifeRequest {
  std::string id;                             ///< empty: made from the title
  std::optional<record::LifeEventKind> kind;  ///< needed
  bool none = false;                          ///< asked for such events, and there are none
  std::string title;
  std::string as_told;  ///< the date in the teller's words
  std::optional<base::EdtfDate> date;
  std::string by;    ///< a person as named
  std::string what;  ///< paragraphs, parted by empty lines
  std::vector<std::string> parts;
  std::string source;
  std::optional<record::Certainty> certainty;
  std::string keep_because;
  std::vector<std::string> must_stay;  ///< parts as named
  std::vector<std::string> photos;
};

/// What is said of an event by itself; its title and what happened are the story's fields.
[[nodiscard]] forms::Form life_form(LifeRequest& request);

/// Adds it to the reel's life, behind what is there.
[[nodiscard]] base::Result<Said> life_event(const LifeRequest& request, Draft& draft);

}  // namespace winchbook::daybook
