#pragma once

#include <span>
#include <string>
#include <string_view>

#include "base/diagnostic.h"
#include "forms/job.h"

namespace winchbook::cli {

/// The rule of a command line that could not be understood at all.
inline constexpr std::string_view kNotUnderstood = "command-line";

/// What a command line asked for.
struct Asked {
  const forms::Row* row = nullptr;
  forms::Job job;
  std::string text;          ///< instead of a job: what --help or --version prints
  base::Diagnostics faults;  ///< instead of a job: what could not be understood
  bool json = false;         ///< the job has --json, and it was typed
};

/// Reads the command line into the form of the job that it names. Faults name what was typed, as
/// the person sees it, and are of the kind of a command. Only the form of that one job is made.
[[nodiscard]] Asked read_command_line(int argc, const char* const* argv,
                                      std::span<const forms::Row> rows, const std::string& version);

}  // namespace winchbook::cli
