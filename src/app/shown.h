#pragma once

#include <vector>

#include "base/result.h"
#include "library/library.h"
#include "pdf/draw.h"
#include "record/people.h"
#include "recordfile/record_file.h"
#include "recordfile/withhold.h"

namespace winchbook::app {

/// The record as its reader may see it, and how it came of the full one.
struct Shown {
  recordfile::LoadedRecord record;
  recordfile::Withholding withheld;
};

/// A withheld edition is a record like any other: it keeps the schema and the rules.
[[nodiscard]] base::Result<Shown> shown_to(library::Library& library, record::Reader reader,
                                           const recordfile::LoadedRecord& full);

/// Reads every photograph once, and makes sure that it is the one the record knows; gives those
/// that are shown; to another than the owner without anything that they carry besides the picture
/// (where it was taken, a comment, a second picture). The edition has the same photographs in the
/// same order, if by other ids. Errors: one that is not there, has changed, or is cut short.
[[nodiscard]] base::Result<std::vector<pdf::Jpeg>> read_photographs(
    library::Library& library, const recordfile::LoadedRecord& full,
    const recordfile::LoadedRecord& shown, record::Reader reader);

}  // namespace winchbook::app
