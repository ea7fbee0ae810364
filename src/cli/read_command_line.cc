#include "cli/read_command_line.h"

#include <CLI/App.hpp>
#include <CLI/Config.hpp>
#include <CLI/Formatter.hpp>
#include <algorithm>
#include <sstream>
#include <string_view>
#include <vector>

#include "xml/schema_words.h"

namespace winchbook::cli {
namespace {

using base::Diagnostic;
using base::Diagnostics;
using forms::Field;
using forms::Row;

constexpr const char* kAbout =
    "winchbook keeps the book of a fishing reel's life.\n"
    "\n"
    "You write what came to the bench, what is its maker's, what you did and what you\n"
    "left alone into record.xml in the reel's folder; winchbook looks it over, works out\n"
    "what follows from it, and sets it as a book the family can keep.";

constexpr const char* kExitCodes =
    "Exit codes: 0 fine, 1 the record is wrong, 2 the command line is wrong,\n"
    "3 a file or the machine is in the way, 4 a fault of winchbook itself.";

std::string_view first_word(std::string_view name) {
  return name.substr(0, name.find(' '));
}

Diagnostic not_understood(std::string message, std::string hint) {
  return base::of_command(
      base::error(std::move(message), std::move(hint), std::string(kNotUnderstood)));
}

/// The job that the first words name: two words where one alone gathers several.
const Row* row_named(std::span<const Row> rows, int argc, const char* const* argv) {
  const Row* found = nullptr;
  const std::string first = argc > 1 ? argv[1] : "";
  const std::string both = argc > 2 ? first + " " + argv[2] : first;
  for (const Row& row : rows) {
    if (row.name == both) return &row;
    if (row.name == first) found = &row;
  }
  return found;
}

Diagnostics unknown_command(std::span<const Row> rows, int argc, const char* const* argv) {
  if (argc < 2) return {};
  const std::string_view typed = argv[1];
  if (typed.empty() || typed.front() == '-') return {};
  std::vector<std::string> names;
  for (const Row& row : rows)
    names.emplace_back(first_word(row.name));
  if (std::find(names.begin(), names.end(), typed) != names.end()) return {};
  const std::string like = xml::nearest(typed, names);
  return {not_understood(
      "there is no command \"" + std::string(typed) + "\"",
      like.empty() ? "winchbook --help lists the commands" : "did you mean " + like + "?")};
}

/// Gives a field what was typed for it; CLI11 tells its faults with those of the command line.
void say_all(Field& field, const std::vector<std::string>& typed, Diagnostics& faults) {
  for (const std::string& one : typed) {
    const Diagnostics wrong = forms::say(field, one);
    faults.insert(faults.end(), wrong.begin(), wrong.end());
  }
}

void add_field(CLI::App& app, Field& field, Diagnostics& faults) {
  if (field.kind == Field::Kind::confirm || field.kind == Field::Kind::unasked) return;
  if (field.kind == Field::Kind::flag) {
    app.add_flag_function(
        field.name, [&](std::int64_t) { say_all(field, {""}, faults); }, field.help);
    return;
  }
  CLI::Option* option = app.add_option(
      field.name,
      [&](const std::vector<std::string>& typed) {
        say_all(field, typed, faults);
        return true;
      },
      field.help);
  option->type_name("TEXT");
  if (field.kind == Field::Kind::texts) option->expected(1, CLI::detail::expected_max_vector_size);
  if (field.needed && field.question.empty() && field.needed()) option->required();
  // An option that may be given several times takes one text each time; a place takes all.
  option->allow_extra_args(option->get_positional() && field.kind == Field::Kind::texts);
}

/// The subcommand of a name of one word or two.
CLI::App* subcommand(CLI::App& program, const Row& row) {
  const std::string_view first = first_word(row.name);
  const std::string name(row.name);
  if (first == row.name) return program.add_subcommand(name, std::string(row.summary));
  CLI::App* group = program.get_subcommand(std::string(first));
  group->require_subcommand(1);
  return group->add_subcommand(name.substr(first.size() + 1), std::string(row.summary));
}

/// A line that cannot be read is answered in the same way, so the form has not been told.
bool json_typed(forms::Form& form, int argc, const char* const* argv) {
  if (forms::find(form, "--json") == nullptr) return false;
  return std::find(argv, argv + argc, std::string_view("--json")) != argv + argc;
}

}  // namespace

Asked read_command_line(int argc, const char* const* argv, std::span<const Row> rows,
                        const std::string& version) {
  if (auto faults = unknown_command(rows, argc, argv); !faults.empty())
    return {nullptr, {}, {}, std::move(faults), false};
  CLI::App program{kAbout, "winchbook"};
  program.footer(kExitCodes);
  program.set_version_flag("--version", "winchbook " + version);
  program.require_subcommand(1);
  program.get_formatter()->column_width(24);
  Asked asked{row_named(rows, argc, argv), {}, {}, {}, false};
  for (const Row& row : rows) {
    CLI::App* one = subcommand(program, row);
    if (&row != asked.row || row.begin == nullptr) continue;
    asked.job = row.begin();
    for (Field& field : asked.job.form)
      add_field(*one, field, asked.faults);
    asked.json = json_typed(asked.job.form, argc, argv);
    if (!asked.job.more_help.empty()) one->footer(asked.job.more_help);
  }
  try {
    program.parse(argc, argv);
  } catch (const CLI::Success& wanted) {
    std::ostringstream text;
    program.exit(wanted, text, text);
    asked.text = text.str();
    asked.faults.clear();
    asked.job = {};
  } catch (const CLI::ParseError& fault) {
    asked.faults = {not_understood(fault.what(), "winchbook --help, or winchbook COMMAND --help")};
  }
  return asked;
}

}  // namespace winchbook::cli
