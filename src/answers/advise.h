#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "answers/value.h"
#include "assess/advice/advice.h"
#include "base/result.h"
#include "forms/job.h"
#include "library/library.h"

namespace winchbook::answers {

/// Advice on one reel.
struct Advised {
  recordfile::LoadedRecord loaded;
  assess::advice::Finding finding;
};

/// Reads the record and, from the sales it holds or those of `sales`, the values; weighs by
/// `ranking`, or by the owner's in the record when it is empty. Error when the record has no visit
/// to advise on.
[[nodiscard]] base::Result<Advised> advise(library::Library& library, const ValueRequest& request,
                                           const std::vector<record::Matter>& ranking);

/// The same of what has been assessed and valued already.
[[nodiscard]] base::Result<Advised> advise(Valued valued, const assess::Assessment& assessment,
                                           const std::vector<record::Matter>& ranking);

/// The answer in sentences and a table.
[[nodiscard]] Blocks advice_told(const Advised& advised, const words::Catalogue& words);
/// The answer as JSON that keeps schemas/advise.schema.json.
[[nodiscard]] std::string advice_as_json(const Advised& advised);

[[nodiscard]] forms::Job advise_job();

}  // namespace winchbook::answers
