#pragma once

#include "knowledge/sales.h"

namespace winchbook::assess::value {

using knowledge::Basis;
using knowledge::changes;
using knowledge::kTraits;
using knowledge::Sale;
using knowledge::Trait;
using State = knowledge::SaleState;

}  // namespace winchbook::assess::value
