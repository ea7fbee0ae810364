#pragma once

#include <string_view>
#include <vector>

#include "base/diagnostic.h"
#include "record/visit.h"

namespace winchbook::record {

/// What matters to somebody, the most important first; no matter stands twice.
struct Ranking {
  std::vector<Matter> matters;
};

/// "memory,use,way back": with commas between. Errors (rule "command-rank"): a word that is no
/// matter, or one that stands twice.
[[nodiscard]] base::Diagnostics read_typed(std::string_view typed, Ranking& into);

}  // namespace winchbook::record
