#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "record/record.h"

namespace winchbook::app {

/// A stretch of a sentence; with a person when it names one.
struct NamedStretch {
  std::string words;
  record::PersonId person;  ///< empty: plain words
};

/// Parts a sentence where it names people of the record by their full or short name, as whole
/// words and spelled as in the record; the longest name wins. A short name that two people share
/// names nobody.
[[nodiscard]] std::vector<NamedStretch> name_people(const record::Record& record,
                                                    std::string_view text);

}  // namespace winchbook::app
