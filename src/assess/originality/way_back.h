#pragma once

#include "assess/originality/originality.h"

namespace winchbook::assess::originality {

/// What could be restored, from the finished rows and indices.
[[nodiscard]] WayBack way_back(const record::Record& record, const record::Visit& visit,
                               const Finding& finding);

}  // namespace winchbook::assess::originality
