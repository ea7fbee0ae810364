#pragma once

#include "assess/dating/dating.h"

namespace winchbook::assess::dating {

/// Whether what a piece bears speaks of this reel. Only pieces not known to be replacements count;
/// the reel as a whole (an empty id) always does.
[[nodiscard]] LeftOut left_out(const record::Record& record, const record::PieceId& piece);

}  // namespace winchbook::assess::dating
