#include "cli/command.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <algorithm>
#include <array>
#include <map>
#include <ostream>

namespace winchbook::cli {
namespace {

constexpr std::array kCommands{
    Command{"check",
            "look a record over: is it whole, does it agree with itself and its photographs",
            add_check},
    Command{
        "grade",
        "reckon what is its maker's and in what state it is, as found and as left, with reasons",
        add_grade},
    Command{"date", "say when it was made, why, and which piece does not belong", add_date},
    Command{"lookup", "look a mark, a material or a number up, without a record", add_lookup},
    Command{"seat", "find the washers of your stock that fit a drag's seat, and how to adapt them",
            add_seat},
    Command{"drag", "reckon what a drag holds, new and worn in, over the spool's fill", add_drag},
    Command{"line", "reckon how much line goes on, the backing, and a turn of the handle",
            add_line},
    Command{"sales", "look recorded sales over", add_sales},
    Command{"value", "say what the reel is worth from recorded sales, or why not", add_value},
    Command{"issue", "write a document: the keepsake for the family", add_issue},
};

constexpr const char* kAbout =
    "winchbook keeps the book of a fishing reel's life.\n"
    "\n"
    "You write what came to the bench, what is its maker's, what you did and what you\n"
    "left alone into record.xml in the reel's folder; winchbook looks it over, reckons\n"
    "what can be reckoned, and sets it as a book the family can keep.";

constexpr const char* kExitCodes =
    "Exit codes: 0 fine, 1 the record is wrong, 2 the command line is wrong,\n"
    "3 a file or the machine is in the way, 4 a fault of winchbook itself.";

/// A fault of files or machine, by the name of its rule.
bool of_the_machine(const base::Diagnostic& fault) {
  return fault.rule.starts_with("file-") || fault.rule.starts_with("font-") ||
         fault.rule.starts_with("schema-own");
}

/// A fault of what was typed.
bool of_the_command(const base::Diagnostic& fault) {
  return fault.rule.starts_with("command-");
}

}  // namespace

Exit tell(const base::Diagnostics& faults, std::ostream& err) {
  for (const base::Diagnostic& fault : faults)
    err << base::to_string(fault);
  if (!base::has_error(faults)) return kFine;
  if (std::any_of(faults.begin(), faults.end(), of_the_machine)) return kMachineWrong;
  return std::any_of(faults.begin(), faults.end(), of_the_command) ? kCommandLineWrong
                                                                   : kRecordWrong;
}

int run(int argc, const char* const* argv, Surroundings& surroundings) {
  CLI::App program{kAbout, "winchbook"};
  program.footer(kExitCodes);
  program.set_version_flag("--version", "winchbook " + surroundings.version);
  program.require_subcommand(1);
  program.get_formatter()->column_width(24);
  std::map<const CLI::App*, Action> actions;
  for (const Command& command : kCommands) {
    CLI::App* one = program.add_subcommand(std::string(command.name), std::string(command.summary));
    actions.emplace(one, command.add(*one));
  }
  try {
    program.parse(argc, argv);
    return actions.at(program.get_subcommands().front())(surroundings);
  } catch (const CLI::Success& wanted) {
    program.exit(wanted, surroundings.out, surroundings.err);
    return kFine;
  } catch (const CLI::ParseError& fault) {
    surroundings.err << "winchbook: " << fault.what()
                     << "\n  hint: winchbook --help, or winchbook COMMAND --help\n";
    return kCommandLineWrong;
  }
}

}  // namespace winchbook::cli
