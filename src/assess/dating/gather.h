#pragma once

#include <vector>

#include "assess/dating/dating.h"

namespace winchbook::assess::dating {

/// Evidence and the doubts met while it was gathered; positions are those of `evidence`.
struct Gathered {
  std::vector<Evidence> evidence;
  std::vector<Warning> warnings;
};

/// Every mark (also those that say nothing of the year), what was told, and what the tables say of
/// marks and materials. Where the bench wrote an end of a mark, the bench's counts; a table's end
/// that it contradicts is a warning.
[[nodiscard]] Gathered gather(const record::Record& record, const knowledge::Knowledge& knowledge);

}  // namespace winchbook::assess::dating
