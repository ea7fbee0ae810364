#pragma once

#include <functional>
#include <optional>
#include <string>

#include "forms/job.h"

namespace winchbook::forms {

/// Whoever can be asked: gets what stands against it so far and a question, gives what was
/// answered; nothing when the asking was ended.
using Ask = std::function<std::optional<std::string>(const base::Diagnostics&,
                                                     const std::string& question)>;

/// What came of a job in the end.
struct Done {
  Outcome outcome;
  bool left = false;          ///< whoever was warned left it for now: nothing was done
  base::Diagnostics refused;  ///< what stood against it and was told when it was asked about
};

/// Asks for what is missing, runs the job, asks the field that an objection names and runs it
/// again. Without `ask` everything missing is a fault of the command, all together.
[[nodiscard]] base::Result<Done> fill_and_run(Job& job, Setting& setting, const Ask& ask);

}  // namespace winchbook::forms
