#pragma once

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>

#include "base/result.h"

namespace winchbook::library {

/// How long another program may take and how much it may say; beyond these it is ended.
struct ProgramLimits {
  int seconds = 120;
  std::size_t out_bytes = std::size_t{64} << 20U;
  std::size_t err_bytes = std::size_t{64} << 10U;
};

/// How another program ended.
struct ProgramEnd {
  enum class By { itself, signal, our_limit };
  By by = By::itself;
  int code = 0;  ///< its exit code, or the signal that ended it
  std::string out;
  std::string err;
};

/// Runs a program with `input` on its standard input, in a process group of its own, so that a key
/// pressed at the terminal is not meant for it. Error: it is not there or cannot be run.
[[nodiscard]] base::Result<ProgramEnd> run_program(const std::filesystem::path& program,
                                                   std::string_view input,
                                                   const ProgramLimits& limits);

}  // namespace winchbook::library
