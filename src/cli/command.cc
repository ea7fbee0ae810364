#include "cli/command.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <algorithm>
#include <array>
#include <map>
#include <ostream>
#include <string>
#include <vector>

#include "xml/schema_words.h"

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
    Command{"advise", "fish it or keep it: weigh the courses by what the owner ranks", add_advise},
    Command{"issue",
            "write a document for its reader: a keepsake for the family, a statement for a buyer",
            add_issue},
    Command{"intake", "take a reel in: make its folder and its first record", add_intake},
    Command{"agree", "write down what was agreed with the owner, and how", add_agree},
    Command{"identify", "write down what the reel is: its maker, when it was made, and why",
            add_identify},
    Command{"part", "add a part and its place, or set what is known of one", add_part},
    Command{"person", "add somebody in the reel's life", add_person},
    Command{"custody", "write down who had it, or that nobody knows", add_custody},
    Command{"story", "write its story down, when its teller approved it, and what happened to it",
            add_story},
    Command{"measure", "write measures down", add_measure},
    Command{"mark", "write a mark down as it was read", add_mark},
    Command{"strip", "enter a step of taking it apart: what comes off, which way round", add_strip},
    Command{"clean", "enter how parts were cleaned", add_clean},
    Command{"work", "enter work that was done", add_work},
    Command{"donor", "add a reel that gives parts", add_donor},
    Command{"fit", "enter a part that was not born in this reel, and where the old one is",
            add_fit},
    Command{"tray", "tell what is off, back and unaccounted for, or enter where parts went",
            add_tray},
    Command{"test", "enter what a test gave, as the reel came or as it left", add_test},
    Command{"photo", "take photographs in, pair them, or watch a camera's folder", add_photo},
    Command{"handback", "hand the reel back: bags, next service, counsel", add_handback},
    Command{"shelf", "find reels, fitted parts and unfinished jobs among all records", add_shelf},
    Command{"undo", "bring the record back as it was before its last change", add_undo},
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

/// The sentence about a first word that is no command; empty when it is one, or an option.
std::string unknown_command(int argc, const char* const* argv) {
  if (argc < 2) return "";
  const std::string_view typed = argv[1];
  if (typed.empty() || typed.front() == '-') return "";
  std::vector<std::string> names;
  for (const Command& command : kCommands)
    names.emplace_back(command.name);
  if (std::find(names.begin(), names.end(), typed) != names.end()) return "";
  const std::string like = xml::nearest(typed, names);
  return "winchbook: there is no command \"" + std::string(typed) + "\"\n  hint: " +
         (like.empty() ? "winchbook --help lists the commands" : "did you mean " + like + "?") +
         "\n";
}

/// A fault of what was typed.
bool of_the_command(const base::Diagnostic& fault) {
  return fault.rule.starts_with("command-");
}

/// The command line as it can be typed again, on one line.
std::string as_typed(int argc, const char* const* argv) {
  std::string line = "winchbook";
  for (int i = 1; i < argc; ++i) {
    const std::string word = argv[i];
    constexpr const char* kPlain =
        "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_./=:,+@%";
    line += ' ';
    if (!word.empty() && word.find_first_not_of(kPlain) == std::string::npos) {
      line += word;
      continue;
    }
    line += '\'';
    for (const char c : word) {
      if (c == '\'') {
        line += "'\\''";
      } else {
        line += c == '\n' || c == '\r' ? ' ' : c;
      }
    }
    line += '\'';
  }
  return line;
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
  if (const std::string fault = unknown_command(argc, argv); !fault.empty()) {
    surroundings.err << fault;
    return kCommandLineWrong;
  }
  surroundings.command_line = as_typed(argc, argv);
  CLI::App program{kAbout, "winchbook"};
  program.footer(kExitCodes);
  program.set_version_flag("--version", "winchbook " + surroundings.version);
  program.require_subcommand(1);
  program.get_formatter()->column_width(24);
  std::map<const CLI::App*, Action> actions;
  for (const Command& command : kCommands) {
    CLI::App* one = program.add_subcommand(std::string(command.name), std::string(command.summary));
    actions.emplace(one, command.add(*one));
    // An option that may be given several times takes one text each time.
    for (CLI::Option* option : one->get_options()) {
      if (!option->get_positional()) option->allow_extra_args(false);
    }
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
