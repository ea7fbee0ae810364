#pragma once

#include <filesystem>
#include <functional>
#include <string>

#include "base/result.h"
#include "daybook/draft.h"
#include "daybook/new_files.h"

namespace winchbook::daybook {

/// Which record to change, and how.
struct EditRequest {
  std::filesystem::path record;  ///< the reel's folder or its record.xml
  std::string command;           ///< as it was typed; kept in the history
  bool dry_run = false;          ///< say what would change, write nothing
  bool somebody_there = false;   ///< who can be asked
};

/// What a change says of itself, and what it doubts.
struct Said {
  std::string sentence;             ///< one line: what changed
  base::Diagnostics warnings;       ///< that block nothing
  std::vector<NewFile> files = {};  ///< written beside the record, and before it
};

/// A change: makes the values of the draft other ones. It looks at nothing else (but at which names
/// are free, when it brings files), so that the same record gives the same bytes. Errors change
/// nothing.
using Change = std::function<base::Result<Said>(Draft&)>;

/// What came of an edit.
struct Edited {
  std::filesystem::path record;
  std::string sentence;
  base::Diagnostics warnings;  ///< of the change, and what `check` doubts now and did not before
  std::string difference;      ///< the lines taken out and put in, as of a dry run
};

/// Makes a change: locks the reel's folder, reads the record, makes the change at its byte offsets,
/// looks the result over as `check` does, writes the files the change brings, keeps the version
/// before, writes the record aside, syncs and renames. Any error (also one that the change itself
/// would bring into the record) leaves the record as it was, and none of the files.
[[nodiscard]] base::Result<Edited> edit(library::Library& library, const EditRequest& request,
                                        const Change& change);

/// Writes the record's bytes in the place of `before`, which is kept in the history first. The
/// caller holds the lock.
[[nodiscard]] base::Diagnostics replace_record(base::Files& files,
                                               const std::filesystem::path& record,
                                               std::string_view before, std::string_view after,
                                               std::string_view command);

}  // namespace winchbook::daybook
