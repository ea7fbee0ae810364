#include <malloc.h>
#include <sys/ioctl.h>
#include <sys/random.h>
#include <unistd.h>

#include <array>
#include <csignal>
#include <cstdlib>
#include <ctime>
#include <exception>
#include <iostream>
#include <optional>
#include <stdexcept>
#include <string>

#include "base/files.h"
#include "cli/command.h"
#include "cli/place.h"

namespace {

/// Today by this machine's clock and time zone.
winchbook::base::Day today() {
  const std::time_t now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  return {local.tm_year + 1900, local.tm_mon + 1, local.tm_mday};
}

/// 16 bytes from the machine's own source of chance, as 32 hexadecimal digits.
std::string draw_salt() {
  constexpr const char* kDigits = "0123456789abcdef";
  std::array<unsigned char, 16> bytes{};
  if (::getrandom(bytes.data(), bytes.size(), 0) != static_cast<ssize_t>(bytes.size())) {
    throw std::runtime_error("the machine gives no random bytes");
  }
  std::string digits;
  for (const unsigned char byte : bytes) {
    digits += kDigits[byte >> 4U];
    digits += kDigits[byte & 15U];
  }
  return digits;
}

/// Somebody at a terminal who can be asked.
std::istream* terminal() {
  for (const int side : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) {
    if (::isatty(side) != 1) return nullptr;
  }
  return &std::cin;
}

/// How wide the terminal is that reads the answers; nothing when they go into a pipe or a file.
std::optional<std::size_t> columns() {
  winsize size{};
  if (::isatty(STDOUT_FILENO) != 1 || ::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0 ||
      size.ws_col == 0) {
    return std::nullopt;
  }
  return size.ws_col;
}

}  // namespace

int main(int argc, char** argv) {
  // A document needs some sixteen megabytes: asked for at once, not in sixty pieces, and its large
  // buffers are used again instead of being given back and asked for anew.
  constexpr int kGrowth = 16 << 20;
  mallopt(M_TOP_PAD, kGrowth);
  mallopt(M_MMAP_THRESHOLD, 4 * kGrowth);
  mallopt(M_TRIM_THRESHOLD, 4 * kGrowth);
  std::signal(SIGXFSZ, SIG_IGN);  // a file too large is then an error that is told
  try {
    winchbook::base::RealFiles files;
    winchbook::library::Library library(
        {files, winchbook::cli::data_folder(std::getenv("WINCHBOOK_DATA")),
         winchbook::cli::version(), today, draw_salt, winchbook::cli::picture_program(),
         winchbook::cli::colour_profile()});
    winchbook::cli::Surroundings surroundings{library, std::cout, std::cerr, terminal(), columns()};
    const int exit = winchbook::cli::run(argc, argv, surroundings);
    if (std::cout.flush()) return exit;
    std::cerr << "error: cannot write what was asked for: the output is full or closed\n"
                 "  hint: make room, or send it to a file on another disk\n";
    return exit == winchbook::cli::kFine ? int{winchbook::cli::kMachineWrong} : exit;
  } catch (const std::exception& bug) {
    std::cerr << "winchbook: a fault of winchbook itself: " << bug.what()
              << "\n  hint: nothing was changed; keep the record and tell whoever looks after "
                 "winchbook\n";
  } catch (...) {
    std::cerr << "winchbook: a fault of winchbook itself\n";
  }
  return winchbook::cli::kOurBug;
}
