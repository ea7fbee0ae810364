#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "answers/telling.h"
#include "base/edtf_date.h"
#include "base/result.h"
#include "forms/job.h"
#include "knowledge/recognise.h"
#include "library/library.h"

namespace winchbook::answers {

/// A mark to look up, without a record.
struct LookupRequest {
  std::string kind;                           ///< "us-patent", "us-patent-date" …
  std::string value;                          ///< as somebody typed it
  std::vector<std::filesystem::path> makers;  ///< further maker files of the bench
  base::Day today;                            ///< a date of issue behind it cannot be
};

/// What the tables say of it.
struct LookupAnswer {
  LookupRequest request;
  std::vector<knowledge::Reading> readings;  ///< in the order of the text; at least one
  /// All readings taken together: the latest beginning, the earliest end. A soft end that crosses a
  /// hard one gives way; two soft ones that cross both do.
  std::optional<knowledge::BoundEnd> not_before;
  std::optional<knowledge::BoundEnd> not_after;
  std::vector<std::string> warnings;  ///< those of the readings, then of taking them together
  std::vector<std::string> assumed;   ///< what was taken for what
  std::vector<std::string> recalled;  ///< ends that nobody has looked up
  std::string sentence;               ///< that answers
};

/// Looks a value up. Error with its column when the kind is none ("command-kind"), when the value
/// is not known, or cannot be: a number beyond the table, a day the calendar does not have, a
/// number and a date that disagree, hard ends that exclude each other.
[[nodiscard]] base::Result<LookupAnswer> look_up(library::Library& library, LookupRequest request);

/// A sentence that answers, then the reasons, what was assumed, and what is only recalled.
[[nodiscard]] Blocks lookup_told(const LookupAnswer& answer, const words::Catalogue& words);

/// The answer as JSON that keeps schemas/lookup.schema.json.
[[nodiscard]] std::string lookup_as_json(const LookupAnswer& answer);

[[nodiscard]] forms::Job lookup_job();

}  // namespace winchbook::answers
