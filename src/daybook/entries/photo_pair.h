#pragma once

#include <string>

#include "daybook/entry.h"

namespace winchbook::daybook {

/// Two photographs taken from the same place, as they were named.
struct PhotoPairRequest : Entry {
  std::string found;  ///< as the reel came
  std::string left;   ///< as it left
};

/// Pairs them. Errors: they are not of these stages, or one has another fellow.
[[nodiscard]] base::Result<Said> photo_pair(const PhotoPairRequest& request, Draft& draft);

[[nodiscard]] forms::Job photo_pair_job();

}  // namespace winchbook::daybook
