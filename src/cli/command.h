#pragma once

#include <filesystem>
#include <functional>
#include <iosfwd>
#include <string>
#include <string_view>

#include "base/edtf_date.h"
#include "base/files.h"
#include "base/result.h"

namespace CLI {
class App;
}

/// The bench's words on the command line: each fills a request, runs a job and tells what came of
/// it.
namespace winchbook::cli {

/// What a command works with: handed in, so that tests can hand in something else.
struct Surroundings {
  base::Files& files;
  std::filesystem::path data;  ///< schemas/, report-templates/, shared/
  std::string version;
  base::Day today;  ///< the only place where the clock is asked is main
  std::ostream& out;
  std::ostream& err;
  std::istream* terminal = nullptr;  ///< somebody who can be asked; null: nobody is there
  std::function<std::string()> draw_salt =
      {};                         ///< 32 hexadecimal digits from a real source of chance
  std::string command_line = {};  ///< as it was typed; run() fills it in
};

/// Exit codes of the program.
enum Exit : int {
  kFine = 0,
  kRecordWrong = 1,
  kCommandLineWrong = 2,
  kMachineWrong = 3,  ///< files or machine
  kOurBug = 4,
};

/// Runs the command once its options are read.
using Action = std::function<Exit(Surroundings&)>;

struct Command {
  std::string_view name;
  std::string_view summary;  ///< one line of --help
  Action (*add)(CLI::App&);  ///< adds the options; what it returns runs when the command was given
};

Action add_check(CLI::App& app);
Action add_grade(CLI::App& app);
Action add_date(CLI::App& app);
Action add_issue(CLI::App& app);
Action add_lookup(CLI::App& app);
Action add_seat(CLI::App& app);
Action add_drag(CLI::App& app);
Action add_line(CLI::App& app);
Action add_sales(CLI::App& app);
Action add_value(CLI::App& app);
Action add_advise(CLI::App& app);
Action add_intake(CLI::App& app);
Action add_identify(CLI::App& app);
Action add_part(CLI::App& app);
Action add_donor(CLI::App& app);
Action add_person(CLI::App& app);
Action add_custody(CLI::App& app);
Action add_story(CLI::App& app);
Action add_measure(CLI::App& app);
Action add_mark(CLI::App& app);
Action add_agree(CLI::App& app);
Action add_strip(CLI::App& app);
Action add_clean(CLI::App& app);
Action add_work(CLI::App& app);
Action add_fit(CLI::App& app);
Action add_tray(CLI::App& app);
Action add_photo(CLI::App& app);
Action add_test(CLI::App& app);
Action add_handback(CLI::App& app);
Action add_shelf(CLI::App& app);
Action add_undo(CLI::App& app);

/// Prints the faults and gives the exit code they deserve: 3 when a file or the machine is in the
/// way, 2 when the command line is wrong (rules "command-…"), else 1.
[[nodiscard]] Exit tell(const base::Diagnostics& faults, std::ostream& err);

/// Reads the command line and runs the command. Never throws.
[[nodiscard]] int run(int argc, const char* const* argv, Surroundings& surroundings);

}  // namespace winchbook::cli
