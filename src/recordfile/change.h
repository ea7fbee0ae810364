#pragma once

#include <vector>

#include "base/result.h"
#include "recordfile/element_order.h"
#include "recordfile/record_file.h"
#include "xml/edit.h"

namespace winchbook::recordfile {

/// What brings the difference between a record as it was read and the values it shall have into its
/// file. New elements come to their place in the order of the schema; what is no longer said is
/// taken out with its line; a changed text is written anew in its element; and every other byte
/// stays, also remarks, notes of the bench's own, and elements that say what their absence would.
/// Empty when the two records say the same.
[[nodiscard]] base::Result<std::vector<xml::Splice>> changes(const LoadedRecord& before,
                                                             const record::Record& after,
                                                             const ElementOrder& order);

}  // namespace winchbook::recordfile
