#pragma once

#include <cstddef>
#include <iosfwd>
#include <optional>
#include <string>

#include "library/library.h"

/// The command line: reads it into a job's form, runs the job and tells what came of it.
namespace winchbook::cli {

/// Exit codes of the program.
enum Exit : int {
  kFine = 0,
  kRecordWrong = 1,
  kCommandLineWrong = 2,
  kMachineWrong = 3,  ///< files or machine
  kOurBug = 4,
};

/// Where a command is heard and answered: handed in, so that tests can hand in something else.
struct Surroundings {
  library::Library& library;
  std::ostream& out;
  std::ostream& err;
  std::istream* terminal = nullptr;  ///< somebody who can be asked; null: nobody is there
  std::optional<std::size_t> columns = std::nullopt;  ///< of the terminal that reads `out`
};

/// The exit code that faults deserve: what the machine did comes before what was typed, and that
/// before what stands in the record.
[[nodiscard]] Exit exit_code(const base::Diagnostics& faults);

/// Reads the command line and runs the command. Never throws.
[[nodiscard]] int run(int argc, const char* const* argv, Surroundings& surroundings);

}  // namespace winchbook::cli
