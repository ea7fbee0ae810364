#include "daybook/edit.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "daybook/edit_difference.h"
#include "daybook/history.h"
#include "library/lock.h"

namespace winchbook::daybook {
namespace {

namespace fs = std::filesystem;
using base::Diagnostics;

/// Files that a process left half written when it was stopped: ".record.xml.aB3dE9".
void take_away_leftovers(const library::World& world, const fs::path& record) {
  constexpr std::size_t kLetters = 6;
  const std::string begin = fmt::format(".{}.", record.filename().string());
  for (const std::string& name : world.files.names_in(record.parent_path())) {
    if (name.starts_with(begin) && name.size() == begin.size() + kLetters) {
      static_cast<void>(world.files.remove(record.parent_path() / name));
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

Diagnostics replace_record(const library::World& world, const fs::path& record,
                           std::string_view before, std::string_view after,
                           std::string_view command) {
  take_away_leftovers(world, record);
  Diagnostics faults = keep_version(world.files, record.parent_path(), before, command, after);
  if (base::has_error(faults)) return faults;
  return world.files.write_aside(record, after);
}

base::Result<Edited> edit(const library::World& world, const EditRequest& request,
                          const Change& change) {
  const fs::path record = recordfile::record_path(world.files, request.record);
  const fs::path folder = record.has_parent_path() ? record.parent_path() : fs::path(".");
  if (!world.files.exists(record)) {
    return base::error_at({record.string(), 0, 0}, "there is no record",
                          "name the reel's folder, or begin one with winchbook intake",
                          "file-read");
  }
  std::unique_ptr<base::HeldLock> held;
  if (!request.dry_run) {
    auto lock = library::lock_reel(world, folder, request.command);
    if (!lock) return lock.faults();
    held = std::move(lock).value();
  }
  const auto schema = recordfile::load_schema(world.files, world.data / "schemas");
  if (!schema) return schema.faults();
  const auto order = ElementOrder::read(world);
  if (!order) return order.faults();
  const auto loaded =
      recordfile::read(world.files, folder / record.filename(), world.data / "schemas");
  if (!loaded) return loaded.faults();

  auto draft = Draft::of(*loaded, *order);
  if (!draft) return draft.faults();
  auto said = change(draft.value());
  if (!said) return said.faults();
  const std::vector<xml::Splice> splices = draft->splices();
  Edited edited{record, std::move(said.value().sentence), std::move(said.value().warnings), {}};
  const std::string after = xml::spliced(loaded->bytes, splices);
  if (after == loaded->bytes) {
    edited.sentence = "nothing to change: the record says so already";
    return edited;
  }
  auto looked_over = recordfile::read_bytes(loaded->file, after, *schema);
  if (!looked_over) return refused(looked_over.faults());
  add_new_doubts(loaded->warnings, looked_over->warnings, edited.warnings);
  if (request.dry_run) {
    edited.difference = difference(loaded->bytes, splices);
    return edited;
  }
  WrittenFiles brought(world.files, folder);
  Diagnostics faults = brought.write(said->files);
  if (!base::has_error(faults)) {
    faults =
        replace_record(world, folder / record.filename(), loaded->bytes, after, request.command);
  }
  if (base::has_error(faults)) return faults;
  brought.keep();
  return edited;
}

}  // namespace winchbook::daybook
