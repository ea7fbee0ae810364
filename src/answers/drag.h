#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "answers/telling.h"
#include "assess/fitting/drag.h"
#include "base/result.h"
#include "forms/job.h"
#include "knowledge/drag.h"
#include "library/library.h"

namespace winchbook::answers {

/// A drag to be reckoned.
struct DragRequest {
  assess::fitting::Drag drag;   ///< `faces` 0: they follow from the stack
  std::string stack;            ///< a list or a file (read_stack)
  std::string material;         ///< its friction is taken when none is given
  std::optional<bool> greased;  ///< empty: nobody said, so the whole range is taken
  bool friction_given = false;
  std::vector<std::string> assumed;  ///< what was taken for what, to be said
};

/// What came of it.
struct DragAnswer {
  DragRequest request;                                  ///< with faces and friction filled in
  const knowledge::DragKnowledge* knowledge = nullptr;  ///< the library's
  std::string friction_source;
  assess::fitting::DragFinding finding;
  std::vector<std::string> warnings;
  std::string language;  ///< of all words in it
};

/// Error when a figure is missing or cannot be (fault_of), or the material is not in the table.
[[nodiscard]] base::Result<DragAnswer> reckon_drag(library::Library& library, DragRequest request);

/// The drag of a record's last visit, from the setting that was measured: what its documents print
/// (assess::fitting::recorded_drag). Error when a measure is missing; those of reading the record.
[[nodiscard]] base::Result<DragAnswer> reckon_recorded_drag(library::Library& library,
                                                            const std::filesystem::path& record);

/// The figures with their formula and their doubts.
[[nodiscard]] Blocks drag_told(const DragAnswer& answer, const words::Catalogue& words);
/// The answer as JSON that keeps schemas/drag.schema.json: mm, N, N·m.
[[nodiscard]] std::string drag_as_json(const DragAnswer& answer);

[[nodiscard]] forms::Job drag_job();

}  // namespace winchbook::answers
