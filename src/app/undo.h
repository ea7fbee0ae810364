#pragma once

#include <optional>
#include <string>
#include <vector>

#include "app/edit.h"
#include "app/history.h"

namespace winchbook::app {

/// Brings back the record as it was before its last change, or before the change with the number
/// `change`. That is a change itself, so that it can be undone. Errors: there is no such change, or
/// the earlier record is not in order.
[[nodiscard]] base::Result<Edited> undo(const World& world, const EditRequest& request,
                                        std::optional<int> change);

/// The changes that were made to a record, oldest first.
[[nodiscard]] std::vector<Version> changes_of(const World& world,
                                              const std::filesystem::path& record);

}  // namespace winchbook::app
