#pragma once

#include <string>
#include <vector>

#include "daybook/edit_draft.h"

namespace winchbook::daybook {

/// What an answer rests on.
struct Evidence {
  std::string because;               ///< in a sentence
  std::vector<std::string> marks;    ///< as they were named
  std::vector<std::string> photos;   ///< as they were named
  std::vector<std::string> told_by;  ///< people as they were named

  [[nodiscard]] bool empty() const {
    return because.empty() && marks.empty() && photos.empty() && told_by.empty();
  }
};

/// Adds it to an answer, each mark, photograph and person by reference; all faults together.
[[nodiscard]] base::Diagnostics add_evidence(Draft& draft, pugi::xml_node answer,
                                             const Evidence& evidence);

}  // namespace winchbook::daybook
