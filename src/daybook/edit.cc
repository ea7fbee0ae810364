#include "daybook/edit.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "daybook/edit_difference.h"
#include "daybook/history.h"
#include "daybook/looks.h"
#include "library/lock.h"
#include "recordfile/change.h"

namespace winchbook::daybook {
namespace {

namespace fs = std::filesystem;
using base::Diagnostics;

/// Files that a process left half written when it was stopped: ".record.xml.aB3dE9".
void take_away_leftovers(base::Files& files, const fs::path& record) {
  constexpr std::size_t kLetters = 6;
  const std::string begin = fmt::format(".{}.", record.filename().string());
  for (const std::string& name : files.names_in(record.parent_path())) {
    if (name.starts_with(begin) && name.size() == begin.size() + kLetters) {
      static_cast<void>(files.remove(record.parent_path() / name));
    }
  }
}

/// What the edit would break, told without the lines of a file that is not written.
Diagnostics refused(Diagnostics faults) {
  Diagnostics told{base::error("nothing was changed, because the record would then be wrong",
                               "see what follows", "edit")};
  for (base::Diagnostic& fault : faults) {
    if (fault.severity != base::Severity::error) continue;
    fault.where.line = 0;
    fault.where.column = 0;
    told.push_back(std::move(fault));
  }
  return told;
}

/// Doubts that the record did not raise before.
void add_new_doubts(const Diagnostics& before, const Diagnostics& after, Diagnostics& warnings) {
  for (const base::Diagnostic& doubt : after) {
    // While the work goes on the tray is not empty; handing back and `winchbook tray` tell it.
    if (doubt.rule == "tray-account") continue;
    const bool old = std::any_of(before.begin(), before.end(), [&](const base::Diagnostic& one) {
      return one.rule == doubt.rule && one.message == doubt.message;
    });
    if (!old) warnings.push_back(doubt);
  }
}

}  // namespace

Diagnostics replace_record(base::Files& files, const fs::path& record, std::string_view before,
                           std::string_view after, std::string_view command) {
  take_away_leftovers(files, record);
  Diagnostics faults = keep_version(files, record.parent_path(), before, command, after);
  if (base::has_error(faults)) return faults;
  return files.write_aside(record, after);
}

base::Result<Edited> edit(library::Library& library, const EditRequest& request,
                          const Change& change) {
  base::Files& files = library.files();
  const fs::path record = recordfile::record_path(files, request.record);
  const fs::path folder = record.has_parent_path() ? record.parent_path() : fs::path(".");
  if (!files.exists(record)) {
    return base::of_machine(
        base::error_at({record.string(), 0, 0}, "there is no record",
                       "name the reel's folder, or begin one with winchbook intake", "file-read"));
  }
  std::unique_ptr<base::HeldLock> held;
  if (!request.dry_run) {
    auto lock = library::lock_reel(library.world(), folder, request.command);
    if (!lock) return lock.faults();
    held = std::move(lock).value();
  }
  const auto order = library.order();
  if (!order) return order.faults();
  const auto loaded = library.record(folder / record.filename());
  if (!loaded) return loaded.faults();

  Draft draft(*loaded, library, request.somebody_there);
  auto said = change(draft);
  if (!said) return said.faults();
  tell_some(draft.record());
  const auto splices = recordfile::changes(*loaded, draft.record(), **order);
  if (!splices) return splices.faults();
  Edited edited{record, std::move(said.value().sentence), std::move(said.value().warnings), {}};
  const std::string after = xml::spliced(loaded->bytes, *splices);
  if (after == loaded->bytes) {
    edited.sentence = "nothing to change: the record says so already";
    return edited;
  }
  auto looked_over = library.record_of(loaded->file, after);
  if (!looked_over) return refused(looked_over.faults());
  add_new_doubts(loaded->warnings, looked_over->warnings, edited.warnings);
  if (request.dry_run) {
    edited.difference = difference(loaded->bytes, *splices);
    return edited;
  }
  WrittenFiles brought(files, folder);
  Diagnostics faults = brought.write(said->files);
  if (!base::has_error(faults)) {
    faults =
        replace_record(files, folder / record.filename(), loaded->bytes, after, request.command);
  }
  if (base::has_error(faults)) return faults;
  brought.keep();
  return edited;
}

}  // namespace winchbook::daybook
