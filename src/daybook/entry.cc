#include "daybook/entry.h"

namespace winchbook::daybook {

forms::Form entry_form(Entry& entry) {
  using namespace forms;  // NOLINT: a form is written in its words
  return {
      field("PATH", "the reel's folder, or its record.xml", entry.path).must(),
      day_or_today("--on", "the day of the entry, as 2026-06-19; left out, today", entry.on),
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
  const EditRequest request{entry.path, setting.command, entry.dry_run, setting.somebody_there};
  return told(edit(setting.library, request, change), entry.dry_run);
}

}  // namespace winchbook::daybook
