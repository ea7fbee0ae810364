#pragma once

#include <string>

#include "answers/grade.h"

namespace winchbook::answers {

/// When the reel was made: the answer in a sentence first, then why step by step, what does not
/// belong, and the doubts.
[[nodiscard]] Blocks date_told(const Graded& graded, const words::Catalogue& words);

/// The same as JSON that keeps schemas/date.schema.json. Days are ISO 8601, null where not known;
/// a range is [first, last] year.
[[nodiscard]] std::string date_as_json(const Graded& graded);

[[nodiscard]] forms::Job date_job();

}  // namespace winchbook::answers
