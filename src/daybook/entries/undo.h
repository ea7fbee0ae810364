#pragma once

#include <filesystem>
#include <optional>
#include <vector>

#include "daybook/edit.h"
#include "daybook/history.h"
#include "forms/job.h"

namespace winchbook::daybook {

/// What is taken back.
struct UndoRequest {
  std::filesystem::path path;  ///< the reel's folder, or its record.xml
  std::optional<int> change;   ///< its number; empty: the last one
  bool list = false;           ///< tell the changes, and write nothing
  bool dry_run = false;        ///< tell what would change, and write nothing
};

/// Brings back the record as it was before its last change, or before the change with the number
/// `change`. That is a change itself, so that it can be undone. Errors: there is no such change, or
/// the earlier record is not in order.
[[nodiscard]] base::Result<Edited> undo(library::Library& library, const EditRequest& request,
                                        std::optional<int> change);

/// The changes that were made to a record, oldest first.
[[nodiscard]] std::vector<Version> changes_of(const base::Files& files,
                                              const std::filesystem::path& record);

[[nodiscard]] forms::Job undo_job();

}  // namespace winchbook::daybook
