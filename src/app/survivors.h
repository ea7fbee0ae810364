#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "app/sought.h"
#include "base/diagnostic.h"
#include "record/people.h"
#include "recordfile/record_file.h"
#include "recordfile/withhold.h"

namespace winchbook::app {

/// A text outside the record that a reader will get.
struct Offered {
  std::string what;  ///< "the document's own words"
  base::Location where;
  std::string text;
  std::string cure;  ///< "take it out of the template's words"
  Written how = Written::prose;
};

/// What is looked through for what was withheld, and how it came to be.
struct Search {
  const recordfile::LoadedRecord& full;
  const recordfile::Withholding& withheld;
  record::Reader reader = record::Reader::stranger;
  const NameWords& names;
};

/// What came of it.
struct Survey {
  base::Diagnostics found;     ///< rule "withheld-survives": errors, and warnings where in doubt
  std::size_t looked_for = 0;  ///< words, phrases and numbers
  std::size_t texts = 0;       ///< looked through
};

/// Looks for everything that was withheld, in all the ways in which a person would write it
/// (Sought), in all that the reader would get: the edition's record, text by text, passage by
/// passage where elements stand among the words, attribute by attribute, id and prefix; and then
/// `offered`. Not looked for are words that everybody may see anyway: in the maker's, the
/// retailer's and the bench's name and place, the model, and the names of people who are not
/// withheld.
///
/// Each find bears its place in the full record and its cure. Of one text, the first is told.
[[nodiscard]] Survey survivors(const Search& search, const std::vector<Offered>& offered);

}  // namespace winchbook::app
