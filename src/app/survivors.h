#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "base/result.h"
#include "library/library.h"
#include "record/people.h"
#include "recordfile/record_file.h"
#include "recordfile/withhold.h"

namespace winchbook::app {

/// How words that stand in names are read: shared/names.txt.
struct NameWords {
  std::vector<std::string> never;     ///< folded; say nothing by themselves: "captain", "van"
  std::vector<std::string> ordinary;  ///< folded; a name only with a capital: "brown", "rose"
};

/// Reads shared/names.txt, whose lines are "never WORD…" or "ordinary WORD…"; '#' begins a comment.
[[nodiscard]] base::Result<NameWords> read_name_words(library::Library& library);

/// A text outside the record that a reader will get.
struct Offered {
  std::string what;  ///< "the document's own words"
  base::Location where;
  std::string text;
  std::string cure;  ///< "take it out of the template's words"
};

/// What is looked through for names that were withheld, and how it came to be.
struct Search {
  const recordfile::LoadedRecord& full;
  const recordfile::Withholding& withheld;
  record::Reader reader = record::Reader::stranger;
  const NameWords& names;
};

/// Looks for everything that was withheld in all that the reader would get: the edition's record,
/// text by text and attribute by attribute, and then `offered`.
///
/// Words are compared as text::folded_words gives them, whatever parts them. Looked for are: names,
/// inscriptions and addresses as a whole; the number of an address with its street; numbers of six
/// digits or more of a contact; and each word of a name, a short name, or (with a capital) of a
/// mention by itself, but not words that say nothing by themselves, and not those that everybody
/// may see anyway: in the maker's, the retailer's and the bench's name and place, the model, and
/// the names of people who are not withheld.
///
/// Errors "withheld-survives", with the place in the full record and the cure. A word that is also
/// an ordinary one is an error with a capital inside a sentence, a warning at the beginning of one,
/// and neither in small letters or beside a number. Of one text, the first is told.
[[nodiscard]] base::Diagnostics survivors(const Search& search,
                                          const std::vector<Offered>& offered);

}  // namespace winchbook::app
