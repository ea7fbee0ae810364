#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "base/edtf_date.h"
#include "cli/command.h"
#include "daybook/edit.h"

/// What the commands that write into a record have in common.
namespace winchbook::cli {

/// Where, on which day, and whether at all.
struct WritingOptions {
  std::string path;
  std::string on;
  bool dry_run = false;
};

/// Adds PATH, --on and --dry-run.
void add_writing_options(CLI::App& app, WritingOptions& options);

/// Adds --id, for what the command adds to the record.
void add_id_option(CLI::App& app, std::string& id);

/// The day of the entry: --on, or today.
[[nodiscard]] base::Result<base::Day> day_of(const WritingOptions& options,
                                             const Surroundings& surroundings);

/// Makes the change, and tells it in one line; a dry run prints the lines that would change.
[[nodiscard]] Exit write(const WritingOptions& options, const daybook::Change& change,
                         Surroundings& surroundings);

/// The same for a job that has edited already.
[[nodiscard]] Exit tell_edited(const base::Result<daybook::Edited>& edited, bool dry_run,
                               Surroundings& surroundings);

/// The same for a change that may break what was agreed with the owner: at a terminal the agreement
/// that allows it is asked for, and the change made with it. `make` gives the change with the
/// agreement as it was named; empty, with none.
[[nodiscard]] Exit write_within_limits(
    const WritingOptions& options, const std::function<daybook::Change(const std::string&)>& make,
    const std::string& agreed, Surroundings& surroundings);

/// Waits for somebody at the terminal to press Enter; false when they end it instead.
[[nodiscard]] bool go_on(std::string_view question, Surroundings& surroundings);

/// Asks for what a command cannot do without: at a terminal; otherwise its option is named as
/// missing.
class Questions {
 public:
  explicit Questions(Surroundings& surroundings) : surroundings_(surroundings) {}

  /// Leaves a text alone that is there.
  void need(std::string_view option, std::string_view question, std::string& text);
  void need(std::string_view option, std::string_view question, std::vector<std::string>& texts);
  void add(base::Diagnostic fault) { faults_.push_back(std::move(fault)); }

  [[nodiscard]] const base::Diagnostics& faults() const { return faults_; }

 private:
  Surroundings& surroundings_;
  base::Diagnostics faults_;
};

}  // namespace winchbook::cli
