#include "picture/confine.h"

#include <seccomp.h>
#include <sys/prctl.h>
#include <sys/resource.h>

#include <cerrno>
#include <csignal>
#include <memory>

#if defined(__SANITIZE_ADDRESS__)
#define WINCHBOOK_WATCHED 1  // NOLINT(cppcoreguidelines-macro-usage)
#else
#define WINCHBOOK_WATCHED 0  // NOLINT(cppcoreguidelines-macro-usage)
#endif

namespace winchbook::picture {
namespace {

constexpr bool kWatched = WINCHBOOK_WATCHED == 1;

void limit(__rlimit_resource resource, rlim_t most) {
  const rlimit both{most, most};
  static_cast<void>(::setrlimit(resource, &both));
}

/// To have memory and threads, to write, to end.
constexpr int kCallsAllowed[] = {
    SCMP_SYS(brk),
    SCMP_SYS(mmap),
    SCMP_SYS(munmap),
    SCMP_SYS(mremap),
    SCMP_SYS(mprotect),
    SCMP_SYS(madvise),
    SCMP_SYS(futex),
    SCMP_SYS(clone),
    SCMP_SYS(clone3),
    SCMP_SYS(rseq),
    SCMP_SYS(set_robust_list),
    SCMP_SYS(sched_yield),
    SCMP_SYS(sched_getaffinity),
    SCMP_SYS(gettid),
    SCMP_SYS(getpid),
    SCMP_SYS(tgkill),
    SCMP_SYS(rt_sigprocmask),
    SCMP_SYS(rt_sigaction),
    SCMP_SYS(rt_sigreturn),
    SCMP_SYS(sigaltstack),
    SCMP_SYS(clock_gettime),
    SCMP_SYS(clock_nanosleep),
    SCMP_SYS(nanosleep),
    SCMP_SYS(getrandom),
    SCMP_SYS(read),
    SCMP_SYS(write),
    SCMP_SYS(writev),
    SCMP_SYS(lseek),
    SCMP_SYS(fstat),
    SCMP_SYS(newfstatat),
    SCMP_SYS(close),
    SCMP_SYS(exit),
    SCMP_SYS(exit_group),
    SCMP_SYS(restart_syscall),
};

}  // namespace

void confine_resources() {
  ::prctl(PR_SET_PDEATHSIG, SIGKILL);
  limit(RLIMIT_CORE, 0);
  limit(RLIMIT_FSIZE, kMostWritten);
  if (kWatched) return;
  limit(RLIMIT_AS, kMostMemory);
  const rlimit seconds{kMostSeconds, kMostSeconds + 1};
  static_cast<void>(::setrlimit(RLIMIT_CPU, &seconds));
}

void confine_calls() {
  if (kWatched) return;
  limit(RLIMIT_NOFILE, 3);
  const std::unique_ptr<void, decltype(&seccomp_release)> filter(
      seccomp_init(SCMP_ACT_ERRNO(EPERM)), &seccomp_release);
  if (!filter) return;
  for (const int call : kCallsAllowed)
    static_cast<void>(seccomp_rule_add(filter.get(), SCMP_ACT_ALLOW, call, 0));
  static_cast<void>(seccomp_load(filter.get()));
}

}  // namespace winchbook::picture
