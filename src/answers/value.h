#pragma once

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "answers/telling.h"
#include "answers/value_terms.h"
#include "assess/assessment.h"
#include "assess/value/expected.h"
#include "assess/value/rounding.h"
#include "assess/value/value.h"
#include "assess/valued_states.h"
#include "base/result.h"
#include "forms/job.h"
#include "library/library.h"
#include "recordfile/record_file.h"

namespace winchbook::answers {

/// What is asked about one reel.
struct ValueRequest {
  std::filesystem::path record;
  ValueTerms terms;
  base::Day today;  ///< what is later has not come yet
  bool json = false;
};

/// PATH, what valuing_form asks, and --json.
[[nodiscard]] forms::Form value_form(ValueRequest& request, std::string_view json_help);

/// The answer, with what it was reckoned from.
struct Valued {
  recordfile::LoadedRecord loaded;
  assess::value::Question question;
  std::vector<assess::ValuedState> states;          ///< as found, as left: one for each estimate
  std::vector<assess::value::CourseState> courses;  ///< all four; none without a visit
  const knowledge::Courses* bench = nullptr;        ///< what is known of them; the library's
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

/// The answer in sentences.
[[nodiscard]] Blocks value_told(const Valued& valued, const words::Catalogue& words);
/// The answer as JSON that keeps schemas/value.schema.json.
[[nodiscard]] std::string value_as_json(const Valued& valued);

[[nodiscard]] forms::Job value_job();

}  // namespace winchbook::answers
