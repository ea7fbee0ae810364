#pragma once

#include <filesystem>
#include <memory>
#include <optional>
#include <utility>

#include "base/edtf_date.h"
#include "daybook/edit.h"
#include "forms/job.h"

/// What every verb that writes into a record has in common.
namespace winchbook::daybook {

/// Where, on which day, and whether at all. The request of each entry begins with it.
struct Entry {
  std::filesystem::path path;      ///< the reel's folder, or its record.xml
  base::Day on;                    ///< the day of the entry
  std::optional<base::Day> today;  ///< what day it is; empty: nobody asked
  bool future = false;             ///< a day of the next week is meant
  bool dry_run = false;            ///< tell what would change, and write nothing
};

/// PATH, --on, --today, --future and --dry-run.
[[nodiscard]] forms::Form entry_form(Entry& entry);

/// What stands against the day of the entry: one that has not come yet is objected to (rule
/// "future-day"), unless it is meant and within a week.
[[nodiscard]] base::Diagnostics against_day(const Entry& entry);

/// --id, for what an entry adds to the record.
[[nodiscard]] forms::Field id_field(std::string& id);

/// --agreed: the agreement that allows what a limit forbids; asked when a limit objects.
[[nodiscard]] forms::Field agreed_field(std::string& agreed);

/// Makes the change that an entry wants.
[[nodiscard]] base::Result<forms::Outcome> write_entry(const Entry& entry, const Change& change,
                                                       forms::Setting& setting);

/// What an edit says of itself, as the outcome of its job.
[[nodiscard]] base::Result<forms::Outcome> told(base::Result<Edited> edited, bool dry_run);

/// The job of an entry: its own fields behind those that all have, and its change. `before` brings
/// into the request what the change does not look at itself: a file, a number drawn by chance.
template <class Request>
forms::Job entry_job(forms::Form (*form)(Request&),
                     base::Result<Said> (*change)(const Request&, Draft&),
                     base::Diagnostics (*before)(Request&, forms::Setting&) = nullptr) {
  auto request = std::make_shared<Request>();
  forms::Form fields = entry_form(*request);
  forms::append(fields, form(*request));
  return {std::move(fields),
          [request, change, before](forms::Setting& setting) -> base::Result<forms::Outcome> {
            if (before != nullptr) {
              if (auto faults = before(*request, setting); !faults.empty()) return faults;
            }
            return write_entry(
                *request, [&](Draft& draft) { return change(*request, draft); }, setting);
          },
          {}};
}

}  // namespace winchbook::daybook
