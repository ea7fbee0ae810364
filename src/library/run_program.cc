#include "library/run_program.h"

#include <fcntl.h>
#include <poll.h>
#include <spawn.h>
#include <sys/socket.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <chrono>
#include <csignal>
#include <cstring>
#include <utility>

extern char** environ;  // NOLINT(readability-redundant-declaration): POSIX declares it nowhere

namespace winchbook::library {
namespace {

using Clock = std::chrono::steady_clock;

class Descriptor {
 public:
  explicit Descriptor(int number = -1) : number_(number) {}
  Descriptor(Descriptor&& other) noexcept : number_(std::exchange(other.number_, -1)) {}
  Descriptor& operator=(Descriptor&& other) noexcept {
    std::swap(number_, other.number_);
    return *this;
  }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  ~Descriptor() { close_now(); }
  [[nodiscard]] int number() const { return number_; }
  void close_now() {
    if (number_ >= 0) ::close(std::exchange(number_, -1));
  }

 private:
  int number_;
};

struct Ends {
  Descriptor ours;
  Descriptor theirs;
};

/// A pair of connected ends, so that writing to one who has gone gives no signal.
bool connect(Ends& ends) {
  std::array<int, 2> pair{-1, -1};
  if (::socketpair(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0, pair.data()) != 0) return false;
  ends = {Descriptor(pair[0]), Descriptor(pair[1])};
  return true;
}

base::Diagnostic cannot_run(const std::filesystem::path& program, int why) {
  return base::of_machine(base::error_at(
      {program.string(), 0, 0},
      std::string("cannot be run: ") + std::strerror(why),  // NOLINT
      "it belongs beside winchbook; build or install it again", "file-picture-program"));
}

base::Result<pid_t> start(const std::filesystem::path& program, const std::array<int, 3>& streams) {
  posix_spawn_file_actions_t actions;
  posix_spawnattr_t attributes;
  ::posix_spawn_file_actions_init(&actions);
  ::posix_spawnattr_init(&attributes);
  for (std::size_t i = 0; i < streams.size(); ++i)
    ::posix_spawn_file_actions_adddup2(&actions, streams.at(i), static_cast<int>(i));
  ::posix_spawnattr_setflags(&attributes, POSIX_SPAWN_SETPGROUP);
  ::posix_spawnattr_setpgroup(&attributes, 0);
  std::string name = program.string();
  std::array<char*, 2> arguments{name.data(), nullptr};
  pid_t process = 0;
  const int fault =
      ::posix_spawn(&process, name.c_str(), &actions, &attributes, arguments.data(), environ);
  ::posix_spawnattr_destroy(&attributes);
  ::posix_spawn_file_actions_destroy(&actions);
  if (fault != 0) return cannot_run(program, fault);
  return process;
}

/// The three streams of a program that runs.
struct Talk {
  Descriptor in;
  Descriptor out;
  Descriptor err;
  std::string_view left;  ///< of the input
};

void give(Talk& talk) {
  const ssize_t count =
      ::send(talk.in.number(), talk.left.data(), talk.left.size(), MSG_NOSIGNAL | MSG_DONTWAIT);
  if (count > 0) talk.left.remove_prefix(static_cast<std::size_t>(count));
  const bool gone = count < 0 && errno != EAGAIN && errno != EINTR;
  if (gone || talk.left.empty()) talk.in.close_now();
}

/// False when it says more than it may.
bool take(Descriptor& from, std::string& said, std::size_t most) {
  std::array<char, 65536> some{};
  const ssize_t count = ::read(from.number(), some.data(), some.size());
  if (count < 0 && (errno == EAGAIN || errno == EINTR)) return true;
  if (count <= 0) {
    from.close_now();
    return true;
  }
  said.append(some.data(), static_cast<std::size_t>(count));
  return said.size() <= most;
}

/// Talks until the program has closed its streams; false when a limit was reached first.
bool talk_to_end(Talk& talk, ProgramEnd& end, const ProgramLimits& limits) {
  const auto deadline = Clock::now() + std::chrono::seconds(limits.seconds);
  while (talk.out.number() >= 0 || talk.err.number() >= 0) {
    std::array<pollfd, 3> streams{{{talk.in.number(), POLLOUT, 0},
                                   {talk.out.number(), POLLIN, 0},
                                   {talk.err.number(), POLLIN, 0}}};
    const auto left =
        std::chrono::duration_cast<std::chrono::milliseconds>(deadline - Clock::now()).count();
    if (left <= 0) return false;
    const int ready = ::poll(streams.data(), streams.size(), static_cast<int>(left));
    if (ready < 0 && errno != EINTR) return false;
    if (ready <= 0) continue;
    if (streams[0].revents != 0) give(talk);
    if (streams[1].revents != 0 && !take(talk.out, end.out, limits.out_bytes)) return false;
    if (streams[2].revents != 0 && !take(talk.err, end.err, limits.err_bytes)) return false;
  }
  return true;
}

}  // namespace

base::Result<ProgramEnd> run_program(const std::filesystem::path& program, std::string_view input,
                                     const ProgramLimits& limits) {
  Ends in;
  Ends out;
  Ends err;
  if (!connect(in) || !connect(out) || !connect(err)) return cannot_run(program, errno);
  const auto process =
      start(program, {in.theirs.number(), out.theirs.number(), err.theirs.number()});
  if (!process) return process.faults();
  in.theirs.close_now();
  out.theirs.close_now();
  err.theirs.close_now();
  Talk talk{std::move(in.ours), std::move(out.ours), std::move(err.ours), input};
  ProgramEnd end;
  const bool within = talk_to_end(talk, end, limits);
  if (!within) ::kill(*process, SIGKILL);
  int status = 0;
  while (::waitpid(*process, &status, 0) < 0 && errno == EINTR) {
  }
  end.by = !within               ? ProgramEnd::By::our_limit
           : WIFSIGNALED(status) ? ProgramEnd::By::signal
                                 : ProgramEnd::By::itself;
  end.code = WIFSIGNALED(status) ? WTERMSIG(status) : WEXITSTATUS(status);
  return end;
}

}  // namespace winchbook::library
