#pragma once

#include <optional>
#include <string>
#include <vector>

#include "daybook/edit.h"
#include "daybook/history.h"

namespace winchbook::daybook {

/// Brings back the record as it was before its last change, or before the change with the number
/// `change`. That is a change itself, so that it can be undone. Errors: there is no such change, or
/// the earlier record is not in order.
[[nodiscard]] base::Result<Edited> undo(const library::World& world, const EditRequest& request,
                                        std::optional<int> change);

/// The changes that were made to a record, oldest first.
[[nodiscard]] std::vector<Version> changes_of(const library::World& world,
                                              const std::filesystem::path& record);

}  // namespace winchbook::daybook
