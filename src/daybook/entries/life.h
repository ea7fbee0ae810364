#pragma once

#include <string>
#include <vector>

#include "daybook/edit.h"

namespace winchbook::daybook {

/// Something that happened to the reel between its maker and this bench.
struct LifeRequest {
  std::string id;    ///< empty: made from the title
  std::string kind;  ///< "repair", "engraving", …
  std::string title;
  std::string as_told;  ///< the date in the teller's words
  std::string date;     ///< EDTF
  std::string by;       ///< a person as named
  std::string what;     ///< paragraphs, parted by empty lines
  std::vector<std::string> parts;
  std::string source;
  std::string certainty;
  std::string keep_because;
  std::vector<std::string> must_stay;  ///< parts as named
  std::vector<std::string> photos;
};

/// Adds it to the reel's life, behind what is there.
[[nodiscard]] Change life_event(LifeRequest request);

}  // namespace winchbook::daybook
