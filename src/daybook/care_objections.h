#pragma once

#include "assess/care/objections.h"
#include "base/diagnostic.h"
#include "knowledge/care.h"

namespace winchbook::daybook {

/// What the care table says of a cleaning, the worst first: errors of rule "care" for what harms,
/// warnings for what is to be minded or not known. They warn and do not forbid: a record must be
/// able to tell what was done, also when it was wrong, so that a reason lets it pass and is printed
/// with the work.
[[nodiscard]] base::Diagnostics care_objections(const knowledge::CareTable& table,
                                                const assess::care::Question& asked);

}  // namespace winchbook::daybook
