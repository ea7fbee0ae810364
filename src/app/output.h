#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "base/diagnostic.h"
#include "library/library.h"
#include "record/people.h"
#include "recordfile/record_file.h"
#include "report/telling.h"

namespace winchbook::app {

/// What was asked for; else beside the record: "keepsake.pdf", and "keepsake-stranger.pdf" when it
/// is not written for the document's usual reader, so that neither is written over the other.
[[nodiscard]] std::filesystem::path output_path(const std::filesystem::path& asked,
                                                const std::string& document,
                                                const recordfile::LoadedRecord& loaded,
                                                std::string_view unusual_reader);

/// A folder that is not there. A file that is there and is no PDF is somebody's work, perhaps the
/// record itself; and what is in issued/ is never written over.
[[nodiscard]] base::Diagnostics faults_of_output(library::Library& library,
                                                 const std::filesystem::path& output,
                                                 const recordfile::LoadedRecord& loaded);

/// What goes where once everything is drawn.
struct Finished {
  std::filesystem::path output;
  const report::Edition& edition;
  record::Reader reader = record::Reader::owner;
  bool final = false;
  const std::string& bytes;
};

/// Writes the PDF; for good, lists and keeps it as well. Empty when it went well.
[[nodiscard]] base::Diagnostics write_files(library::Library& library,
                                            const recordfile::LoadedRecord& loaded,
                                            const Finished& finished);

}  // namespace winchbook::app
