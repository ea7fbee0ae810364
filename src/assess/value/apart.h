#pragma once

#include "assess/value/value.h"

namespace winchbook::assess::value {

/// Whether the sales tell two states apart: neither's middle lies within the other's range. States
/// that they do not tell apart are worth the same, whichever sales were asked. Example: 89 to 180,
/// about 130, and 91 to 180, about 135, are not told apart.
[[nodiscard]] bool told_apart(const Estimate& one, const Estimate& other);

}  // namespace winchbook::assess::value
