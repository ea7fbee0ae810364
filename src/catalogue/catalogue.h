#pragma once

#include <span>

#include "forms/job.h"

/// Every verb, question and document job, in the order in which they are listed.
namespace winchbook::catalogue {

[[nodiscard]] std::span<const forms::Row> rows();

}  // namespace winchbook::catalogue
