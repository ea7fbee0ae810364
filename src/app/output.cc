#include "app/output.h"

#include <cstdint>

#include "app/editions.h"
#include "record/enum_words.h"

namespace winchbook::app {

namespace fs = std::filesystem;
using base::Diagnostics;

fs::path output_path(const fs::path& asked, const std::string& document,
                     const recordfile::LoadedRecord& loaded, std::string_view unusual_reader) {
  if (!asked.empty()) return asked;
  std::string name = document;
  if (!unusual_reader.empty()) name += "-" + std::string(unusual_reader);
  return loaded.folder / (name + ".pdf");
}

Diagnostics faults_of_output(library::Library& library, const fs::path& output,
                             const recordfile::LoadedRecord& loaded) {
  const base::Location where{output.string(), 0, 0};
  const fs::path folder = output.has_parent_path() ? output.parent_path() : fs::path(".");
  if (!library.files().is_folder(folder)) {
    return {base::of_machine(
        base::error_at(where, "cannot write: there is no folder \"" + folder.string() + "\"",
                       "make the folder, or name another; nothing was changed", "file-write"))};
  }
  const fs::path kept = library.files().resolved(loaded.folder / "issued");
  if (library.files().resolved(output).parent_path() == kept) {
    return {
        base::of_machine(base::error_at(where, "editions kept in issued/ are never written over",
                                        "name a file outside issued/", "file-output"))};
  }
  if (!library.files().exists(output) || library.files().is_folder(output)) return {};
  constexpr std::uintmax_t kMostOutputBytes = std::uintmax_t{1} << 31U;
  const auto old = library.files().read(output, kMostOutputBytes);
  if (old && old->starts_with("%PDF-")) return {};
  return {base::of_machine(base::error_at(where, "the file is there already and is not a PDF",
                                          "name another file; this one was left as it is",
                                          "file-output"))};
}

Diagnostics write_files(library::Library& library, const recordfile::LoadedRecord& loaded,
                        const Finished& finished) {
  if (!finished.final) return library.files().write_aside(finished.output, finished.bytes);
  const report::Edition& edition = finished.edition;
  // Listed and kept first: a book that claims an edition must have one.
  Diagnostics faults =
      keep_edition(library, loaded.folder,
                   {edition.document, edition.number, base::iso_text(edition.date),
                    std::string(record::word_of(finished.reader)), kept_name(edition),
                    edition.fingerprint, edition.code, "winchbook " + library.world().version},
                   finished.bytes);
  if (base::has_error(faults)) return faults;
  return library.files().write_aside(finished.output, finished.bytes);
}

}  // namespace winchbook::app
