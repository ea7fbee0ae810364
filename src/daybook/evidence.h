#pragma once

#include <string>
#include <vector>

#include "daybook/draft.h"
#include "forms/form.h"

namespace winchbook::daybook {

/// What an answer rests on, as it was typed.
struct Evidence {
  std::string because;               ///< in a sentence
  std::vector<std::string> marks;    ///< as they were named
  std::vector<std::string> photos;   ///< as they were named
  std::vector<std::string> told_by;  ///< people as they were named

  [[nodiscard]] bool empty() const {
    return because.empty() && marks.empty() && photos.empty() && told_by.empty();
  }
};

/// --because, --mark, --photo and --told-by.
[[nodiscard]] forms::Form evidence_form(Evidence& evidence);

/// The same by reference; all faults together.
[[nodiscard]] base::Result<record::Evidence> evidence_of(const Draft& draft, const Evidence& typed);

}  // namespace winchbook::daybook
