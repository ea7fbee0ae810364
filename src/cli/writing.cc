#include "cli/writing.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <algorithm>
#include <istream>
#include <ostream>

#include "cli/measures.h"

namespace winchbook::cli {

void add_writing_options(CLI::App& app, WritingOptions& options) {
  app.add_option("PATH", options.path, "the reel's folder, or its record.xml")->required();
  app.add_option("--on", options.on, "the day of the entry, as 2026-06-19; left out, today");
  app.add_flag("--dry-run", options.dry_run, "print what would change, and write nothing");
}

void add_id_option(CLI::App& app, std::string& id) {
  app.add_option("--id", id, "its id in the record; left out, made from its name");
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

Exit tell_edited(const base::Result<daybook::Edited>& edited, bool dry_run,
                 Surroundings& surroundings) {
  if (!edited) return tell(edited.faults(), surroundings.err);
  static_cast<void>(tell(edited->warnings, surroundings.err));
  surroundings.out << edited->difference;
  surroundings.out << (dry_run ? "not written: " : "") << edited->sentence << "\n";
  return kFine;
}

Exit write(const WritingOptions& options, const daybook::Change& change,
           Surroundings& surroundings) {
  const library::World world{surroundings.files, surroundings.data, surroundings.version};
  const daybook::EditRequest request{options.path, surroundings.command_line, options.dry_run};
  return tell_edited(daybook::edit(world, request, change), options.dry_run, surroundings);
}

Exit write_within_limits(const WritingOptions& options,
                         const std::function<daybook::Change(const std::string&)>& make,
                         const std::string& agreed, Surroundings& surroundings) {
  const library::World world{surroundings.files, surroundings.data, surroundings.version};
  const daybook::EditRequest request{options.path, surroundings.command_line, options.dry_run};
  const auto edited = daybook::edit(world, request, make(agreed));
  const auto is_limit = [](const base::Diagnostic& fault) { return fault.rule == "limit"; };
  if (edited || !agreed.empty() || surroundings.terminal == nullptr ||
      std::none_of(edited.faults().begin(), edited.faults().end(), is_limit)) {
    return tell_edited(edited, options.dry_run, surroundings);
  }
  const Exit refused = tell(edited.faults(), surroundings.err);
  surroundings.err << "Which agreement allows it (its id; nothing, to leave it)? ";
  surroundings.err.flush();
  std::string answer;
  if (!std::getline(*surroundings.terminal, answer) || answer.empty()) return refused;
  return tell_edited(daybook::edit(world, request, make(answer)), options.dry_run, surroundings);
}

bool go_on(std::string_view question, Surroundings& surroundings) {
  surroundings.err << question << " ";
  surroundings.err.flush();
  std::string answer;
  return static_cast<bool>(std::getline(*surroundings.terminal, answer));
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
