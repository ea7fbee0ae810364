#include "daybook/entries/undo.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "daybook/edit_difference.h"
#include "library/lock.h"
#include "seal/digest.h"

namespace winchbook::daybook {
namespace {

namespace fs = std::filesystem;

constexpr std::uintmax_t kMostBytes = xml::Limits{}.bytes;

/// The last change that was made, or the one with this number. A version equal to the record is of
/// a change that was begun and never made.
base::Result<Version> change_to_undo(const library::World& world, const fs::path& folder,
                                     const std::string& now, std::optional<int> number) {
  std::vector<Version> all = versions(world.files, folder);
  if (number) {
    const auto found = std::find_if(all.begin(), all.end(),
                                    [&](const Version& one) { return one.number == *number; });
    if (found != all.end()) return *found;
    return base::of_command(
        base::of_command(base::error(fmt::format("there is no change {} in the history", *number),
                    "winchbook undo PATH --list tells them all", "command-undo")));
  }
  while (!all.empty()) {
    const auto before = version_before(world.files, folder, all.back().number);
    if (!before) return before.faults();
    if (*before != now) return all.back();
    all.pop_back();
  }
  return base::error("there is no change to undo",
                     "only what winchbook's own commands changed is kept in .history/", "undo");
}

}  // namespace

std::vector<Version> changes_of(const library::World& world, const fs::path& record) {
  const fs::path file = recordfile::record_path(world.files, record);
  return versions(world.files, file.has_parent_path() ? file.parent_path() : fs::path("."));
}

base::Result<Edited> undo(const library::World& world, const EditRequest& request,
                          std::optional<int> change) {
  const fs::path record = recordfile::record_path(world.files, request.record);
  const fs::path folder = record.has_parent_path() ? record.parent_path() : fs::path(".");
  std::unique_ptr<base::HeldLock> held;
  if (!request.dry_run) {
    auto lock = library::lock_reel(world, folder, request.command);
    if (!lock) return lock.faults();
    held = std::move(lock).value();
  }
  const auto now = world.files.read(record, kMostBytes);
  if (!now) return now.faults();
  const auto version = change_to_undo(world, folder, *now, change);
  if (!version) return version.faults();
  auto before = version_before(world.files, folder, version->number);
  if (!before) return before.faults();
  const auto schema = recordfile::load_schema(world.files, world.data / "schemas");
  if (!schema) return schema.faults();
  auto looked_over = recordfile::read_bytes(record.string(), *before, *schema);
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
      replace_record(world, folder / record.filename(), *now, *before, request.command);
  if (base::has_error(faults)) return faults;
  return edited;
}

}  // namespace winchbook::daybook
