#include "app/killed.h"

#include <sys/ptrace.h>
#include <sys/wait.h>
#include <unistd.h>

#include <csignal>
#include <map>
#include <optional>

namespace furnish::test {
namespace {
/// A child that waits to be watched, and then does something.
::pid_t child_that(const std::function<void()>& something) {
  const ::pid_t child = ::fork();
  if (child != 0) return child;
  ::ptrace(PTRACE_TRACEME, 0, nullptr, nullptr);
  ::raise(SIGSTOP);
  something();
  ::_exit(0);
}

/// Watches a child and its threads call by call, to its end or to that point.
bool watch(::pid_t child, const std::optional<CallPoint>& point, std::vector<long>& calls) {
  int status = 0;
  if (::waitpid(child, &status, 0) != child || !WIFSTOPPED(status)) return false;
  constexpr long options = PTRACE_O_TRACESYSGOOD | PTRACE_O_TRACECLONE | PTRACE_O_EXITKILL;
  ::ptrace(PTRACE_SETOPTIONS, child, nullptr, options);
  ::ptrace(PTRACE_SYSCALL, child, nullptr, nullptr);
  std::size_t met = 0;
  std::map<::pid_t, long> in_call;
  while (true) {
    const ::pid_t one = ::waitpid(-1, &status, __WALL);
    if (one < 0) return false;
    if (WIFEXITED(status) || WIFSIGNALED(status)) {
      if (one == child) return false;
      continue;
    }
    const int signal = WSTOPSIG(status);
    const bool call = signal == (SIGTRAP | 0x80);
    if (call) {
      __ptrace_syscall_info info{};
      ::ptrace(PTRACE_GET_SYSCALL_INFO, one, sizeof info, &info);
      const bool begins = info.op == PTRACE_SYSCALL_INFO_ENTRY;
      if (begins) {
        in_call[one] = static_cast<long>(info.entry.nr);
        calls.push_back(in_call[one]);
      }
      if (point && in_call[one] == point->number && begins != point->done && met++ == point->nth) {
        ::kill(child, SIGKILL);
        // Its threads are watched too, and it is not gone before each of them was waited for.
        ::pid_t gone = 0;
        while (gone >= 0 && (gone != child || WIFSTOPPED(status))) {
          gone = ::waitpid(-1, &status, __WALL);
        }
        return true;
      }
    }
    const bool ours = call || signal == SIGTRAP || signal == SIGSTOP;
    ::ptrace(PTRACE_SYSCALL, one, nullptr, ours ? 0 : signal);
  }
}
}  // namespace

std::vector<long> calls_of(const std::function<void()>& something) {
  std::vector<long> calls;
  watch(child_that(something), std::nullopt, calls);
  return calls;
}

bool killed_at(const CallPoint& point, const std::function<void()>& something) {
  std::vector<long> calls;
  return watch(child_that(something), point, calls);
}

bool can_watch_calls() {
  static const bool can = !calls_of([] { ::sync(); }).empty();
  return can;
}
}  // namespace furnish::test
