#include "daybook/entries/undo.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "daybook/edit_difference.h"
#include "daybook/entry.h"
#include "library/lock.h"
#include "seal/digest.h"

namespace winchbook::daybook {
namespace {

namespace fs = std::filesystem;

constexpr std::uintmax_t kMostBytes = xml::Limits{}.bytes;

forms::Form form(UndoRequest& request) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      field("PATH", "the reel's folder, or its record.xml", request.path).must(),
      field("--change", "go back before the change with this number; left out, the last one",
            request.change),
      flag("--list", "tell the changes, oldest first, and write nothing", request.list),
      flag("--dry-run", "print what would change, and write nothing", request.dry_run),
  };
}

/// The last change that was made, or the one with this number. A version equal to the record is of
/// a change that was begun and never made.
base::Result<Version> change_to_undo(const base::Files& files, const fs::path& folder,
                                     const std::string& now, std::optional<int> number) {
  std::vector<Version> all = versions(files, folder);
  if (number) {
    const auto found = std::find_if(all.begin(), all.end(),
                                    [&](const Version& one) { return one.number == *number; });
    if (found != all.end()) return *found;
    return base::of_command(
        base::error(fmt::format("there is no change {} in the history", *number),
                    "winchbook undo PATH --list tells them all", "command-undo"));
  }
  while (!all.empty()) {
    const auto before = version_before(files, folder, all.back().number);
    if (!before) return before.faults();
    if (*before != now) return all.back();
    all.pop_back();
  }
  return base::error("there is no change to undo",
                     "only what winchbook's own commands changed is kept in .history/", "undo");
}

base::Result<forms::Outcome> undo_or_list(const UndoRequest& request, forms::Setting& setting) {
  if (!request.list) {
    const EditRequest edit{request.path, setting.command, request.dry_run};
    return told(undo(setting.library, edit, request.change), request.dry_run);
  }
  forms::Outcome changes;
  for (const Version& one : changes_of(setting.library.files(), request.path))
    changes.text += fmt::format("{:>4}  {}\n", one.number, one.command);
  return changes;
}

}  // namespace

std::vector<Version> changes_of(const base::Files& files, const fs::path& record) {
  const fs::path file = recordfile::record_path(files, record);
  return versions(files, file.has_parent_path() ? file.parent_path() : fs::path("."));
}

base::Result<Edited> undo(library::Library& library, const EditRequest& request,
                          std::optional<int> change) {
  base::Files& files = library.files();
  const fs::path record = recordfile::record_path(files, request.record);
  const fs::path folder = record.has_parent_path() ? record.parent_path() : fs::path(".");
  std::unique_ptr<base::HeldLock> held;
  if (!request.dry_run) {
    auto lock = library::lock_reel(library.world(), folder, request.command);
    if (!lock) return lock.faults();
    held = std::move(lock).value();
  }
  const auto now = files.read(record, kMostBytes);
  if (!now) return now.faults();
  const auto version = change_to_undo(files, folder, *now, change);
  if (!version) return version.faults();
  auto before = version_before(files, folder, version->number);
  if (!before) return before.faults();
  const auto looked_over = library.record_of(record.string(), *before);
  if (!looked_over) return looked_over.faults();

  Edited edited{record, {}, {}, {}};
  edited.sentence =
      fmt::format("the record is again as it was before change {}: {}", version->number,
                  version->command.empty() ? "not told what" : version->command);
  if (!change && version->sha256 != seal::hex(seal::fingerprint(*now))) {
    edited.warnings.push_back(base::warning_at(
        {record.string(), 0, 0},
        "the record was changed by hand after that command, and this went back too",
        "winchbook undo again brings it back", "undo"));
  }
  if (request.dry_run) {
    edited.difference = difference(*now, *before);
    return edited;
  }
  const auto faults =
      replace_record(files, folder / record.filename(), *now, *before, request.command);
  if (base::has_error(faults)) return faults;
  return edited;
}

forms::Job undo_job() {
  return forms::job_of<UndoRequest>(form, undo_or_list);
}

}  // namespace winchbook::daybook
