#include "daybook/entry.h"

#include <fmt/format.h>

namespace winchbook::daybook {
namespace {

forms::Field future_field(bool& future) {
  forms::Field made = forms::flag("--future", "the day is meant, though it has not come", future);
  made.into = [&future](std::string_view typed) -> base::Diagnostics {
    future = typed.empty() || typed == "y" || typed == "yes";
    if (future) return {};
    return {base::error("the day was not confirmed", "give the day with --on", "command-day")};
  };
  return std::move(made).resolves("future-day", "Is that day meant (yes; nothing, to leave it)?");
}

}  // namespace

base::Diagnostics against_day(const Entry& entry) {
  constexpr std::int64_t kMostDays = 7;
  if (!entry.today || entry.on <= *entry.today) return {};
  const std::int64_t days = base::day_number(entry.on) - base::day_number(*entry.today);
  const std::string message = fmt::format("{} has not come yet: today is {}",
                                          base::iso_text(entry.on), base::iso_text(*entry.today));
  if (days > kMostDays) {
    return {base::of_command(
        base::error(message, "correct the day given with --on, or the clock", "command-day"))};
  }
  if (entry.future) return {};
  return {base::of_command(base::error(message, "correct --on, or say --future", "future-day"))};
}

forms::Form entry_form(Entry& entry) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      field("PATH", "the reel's folder, or its record.xml", entry.path).must(),
      day_or_today("--on", "the day of the entry, as 2026-06-19; left out, today", entry.on),
      day_or_today("--today", "what day it is, for a script; left out, by the clock", entry.today),
      future_field(entry.future),
      flag("--dry-run", "print what would change, and write nothing", entry.dry_run),
  };
}

forms::Field id_field(std::string& id) {
  return forms::field("--id", "its id in the record; left out, made from its name", id);
}

forms::Field agreed_field(std::string& agreed) {
  return forms::field("--agreed", "the agreement that allows what a limit forbids", agreed)
      .resolves("limit", "Which agreement allows it (its id; nothing, to leave it)?");
}

base::Result<forms::Outcome> told(base::Result<Edited> edited, bool dry_run) {
  if (!edited) return edited.faults();
  Edited done = std::move(edited).value();
  return forms::Outcome{done.difference + (dry_run ? "not written: " : "") + done.sentence + "\n",
                        std::move(done.warnings),
                        {}};
}

base::Result<forms::Outcome> write_entry(const Entry& entry, const Change& change,
                                         forms::Setting& setting) {
  if (auto faults = against_day(entry); !faults.empty()) return faults;
  const EditRequest request{entry.path, setting.command, entry.dry_run, setting.somebody_there};
  return told(edit(setting.library, request, change), entry.dry_run);
}

}  // namespace winchbook::daybook
