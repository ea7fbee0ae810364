#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "record/record.h"

namespace winchbook::record {

/// A stretch of a sentence; with a person when it names one.
struct NamedStretch {
  std::string words;
  PersonId person;  ///< empty: plain words
};

/// Parts a sentence where it names people of the record by their full or short name, as whole
/// words and spelled as in the record; the longest name wins. A short name that two people share
/// names nobody.
[[nodiscard]] std::vector<NamedStretch> name_people(const Record& record, std::string_view text);

/// The text in which nobody is named: people by their stand-ins, and what is left of their names (a
/// family's name that several share) by an ellipsis. Words of the maker's name stay.
[[nodiscard]] std::string without_names(const Record& record, std::string_view text);

}  // namespace winchbook::record
