#pragma once

#include <cstddef>
#include <filesystem>
#include <string>
#include <vector>

#include "answers/value_terms.h"
#include "assess/assessment.h"
#include "assess/value/expected.h"
#include "assess/value/rounding.h"
#include "assess/value/value.h"
#include "assess/valued_states.h"
#include "base/result.h"
#include "library/library.h"
#include "recordfile/record_file.h"

namespace winchbook::answers {

/// What is asked about one reel.
struct ValueRequest {
  std::filesystem::path record;
  ValueTerms terms;
  base::Day today;
};

/// The answer, with what it was reckoned from.
struct Valued {
  recordfile::LoadedRecord loaded;
  assess::value::Question question;
  std::vector<assess::ValuedState> states;          ///< as found, as left: one for each estimate
  std::vector<assess::value::CourseState> courses;  ///< all four; none without a visit
  knowledge::Courses bench;                         ///< what is known of the courses
  assess::value::Finding finding;
  knowledge::PriceRules rules;
  std::size_t older = 0;  ///< sales of the model that are older than those that were used
};

/// Reads the record, the sales and the prices, and answers. Error when there is no such purpose, no
/// currency can be told, the day has not come, or a file is wrong.
[[nodiscard]] base::Result<Valued> value(library::Library& library, const ValueRequest& request);
/// The same of a record that has been read, as its reader may see it, and assessed.
[[nodiscard]] base::Result<Valued> value(library::Library& library, const ValueRequest& request,
                                         recordfile::LoadedRecord loaded,
                                         const assess::Assessment& assessment);

/// An amount rounded to two figures, as a price is told: low ends down, high ends up.
using assess::value::RoundPrice;
[[nodiscard]] std::string price_text(double amount, RoundPrice how);

/// The answer in sentences and a table; ends with a line break.
[[nodiscard]] std::string value_in_words(const Valued& valued);
/// The same as JSON that keeps schemas/value.schema.json.
[[nodiscard]] std::string value_as_json(const Valued& valued);

/// Why a sale does not count: a word for JSON, and what is said of it.
struct ExclusionTerm {
  const char* word;
  const char* spoken;
};
[[nodiscard]] ExclusionTerm term(assess::value::Excluded why);
/// The same of what is noted beside an estimate.
[[nodiscard]] ExclusionTerm term(assess::value::Note note);
[[nodiscard]] const char* word(assess::value::Trait trait);
/// "surface", or what a course makes of it: "working with care", "originality 78 of 100".
[[nodiscard]] std::string changed_words(assess::value::Trait trait,
                                        const assess::value::State& state);
[[nodiscard]] const char* word(assess::value::StateFrom from);
/// "make it fish".
[[nodiscard]] const char* spoken(record::Course course);
[[nodiscard]] const char* word(assess::value::Basis basis);
[[nodiscard]] const char* word(assess::value::Method method);

}  // namespace winchbook::answers
