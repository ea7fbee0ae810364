#include "cli/writing.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <istream>
#include <ostream>

#include "cli/measures.h"

namespace winchbook::cli {

void add_writing_options(CLI::App& app, WritingOptions& options) {
  app.add_option("PATH", options.path, "the reel's folder, or its record.xml")->required();
  app.add_option("--on", options.on, "the day of the entry, as 2026-06-19; left out, today");
  app.add_flag("--dry-run", options.dry_run, "print what would change, and write nothing");
}

base::Result<base::Day> day_of(const WritingOptions& options, const Surroundings& surroundings) {
  if (options.on.empty()) return surroundings.today;
  const auto day = base::parse_day(options.on);
  if (day) return *day;
  base::Diagnostics faults = day.faults();
  for (base::Diagnostic& fault : faults) {
    fault.message = "--on: " + fault.message;
    fault.rule = "command-day";
  }
  return faults;
}

Exit tell_edited(const base::Result<app::Edited>& edited, bool dry_run,
                 Surroundings& surroundings) {
  if (!edited) return tell(edited.faults(), surroundings.err);
  static_cast<void>(tell(edited->warnings, surroundings.err));
  surroundings.out << edited->difference;
  surroundings.out << (dry_run ? "not written: " : "") << edited->sentence << "\n";
  return kFine;
}

Exit write(const WritingOptions& options, const app::Change& change, Surroundings& surroundings) {
  const app::World world{surroundings.files, surroundings.data, surroundings.version};
  const app::EditRequest request{options.path, surroundings.command_line, options.dry_run};
  return tell_edited(app::edit(world, request, change), options.dry_run, surroundings);
}

void Questions::need(std::string_view option, std::string_view question, std::string& text) {
  if (!text.empty()) return;
  if (surroundings_.terminal != nullptr) {
    surroundings_.err << question << " ";
    surroundings_.err.flush();
    if (std::getline(*surroundings_.terminal, text) && !text.empty()) return;
  }
  faults_.push_back(base::error(std::string(option) + " is missing",
                                "it answers: " + std::string(question), "command-missing"));
}

void Questions::need(std::string_view option, std::string_view question,
                     std::vector<std::string>& texts) {
  if (!texts.empty()) return;
  std::string text;
  need(option, question, text);
  if (!text.empty()) texts.push_back(std::move(text));
}

}  // namespace winchbook::cli
