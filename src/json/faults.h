#pragma once

#include <string>

#include "base/diagnostic.h"

namespace winchbook::json {

/// All of them, as JSON that keeps schemas/faults.schema.json.
[[nodiscard]] std::string faults_as_json(const base::Diagnostics& faults);

}  // namespace winchbook::json
