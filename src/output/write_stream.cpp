#include "output/write_stream.h"

#include <fcntl.h>
#include <signal.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <chrono>
#include <thread>

namespace furnish {
namespace {
/// Keeps a reader that went away from ending the process: this thread sees EPIPE instead.
class NoBrokenPipeSignal {
 public:
  NoBrokenPipeSignal() {
    ::sigemptyset(&pipe_);
    ::sigaddset(&pipe_, SIGPIPE);
    ::pthread_sigmask(SIG_BLOCK, &pipe_, &before_);
  }
  NoBrokenPipeSignal(const NoBrokenPipeSignal&) = delete;
  NoBrokenPipeSignal& operator=(const NoBrokenPipeSignal&) = delete;
  ~NoBrokenPipeSignal() {
    const timespec no_wait{};
    if (::sigismember(&before_, SIGPIPE) == 0) ::sigtimedwait(&pipe_, nullptr, &no_wait);
    ::pthread_sigmask(SIG_SETMASK, &before_, nullptr);
  }

 private:
  sigset_t pipe_{}, before_{};
};

/// A device, a named pipe or a terminal, open to be written to; -1, and errno says why. A pipe that
/// nobody reads is waited for, but not for ever: who mistook one for a file would see nothing
/// happen.
int open_directly(const Disk& disk, const char* path) {
  struct stat status {};
  const bool pipe = disk.stat(path, &status) == 0 && S_ISFIFO(status.st_mode);
  constexpr std::chrono::milliseconds between{20}, longest{3000};
  for (auto waited = std::chrono::milliseconds(0);; waited += between) {
    // So that it says at once whether somebody reads.
    const int opened = disk.open(path, O_WRONLY | O_CLOEXEC | O_NOCTTY | O_NONBLOCK, 0);
    if (opened >= 0) {
      ::fcntl(opened, F_SETFL, O_WRONLY);
      return opened;
    }
    if (errno != ENXIO || !pipe || waited >= longest) return -1;
    std::this_thread::sleep_for(between);
  }
}
}  // namespace

Errno write_to_standard_output(const Disk& disk, std::string_view bytes) {
  const NoBrokenPipeSignal quiet;
  const Errno fault = write_all(disk, STDOUT_FILENO, bytes);
  return fault != 0 ? fault : sync(disk, STDOUT_FILENO);
}

Errno write_directly(const Disk& disk, const std::string& path, std::string_view bytes) {
  const NoBrokenPipeSignal quiet;
  Descriptor target(disk, open_directly(disk, path.c_str()));
  if (!target.open()) return errno;
  Errno fault = write_all(disk, target.get(), bytes);
  if (fault == 0) fault = sync(disk, target.get());
  const Errno at_close = target.close();
  return fault != 0 ? fault : at_close;
}

/// A device, a named pipe or a terminal, also behind a link such as /dev/stdout.
bool takes_a_stream(const Disk& disk, const std::string& path) {
  struct stat status {};
  return disk.stat(path.c_str(), &status) == 0 && !S_ISREG(status.st_mode) &&
         !S_ISDIR(status.st_mode);
}
}  // namespace furnish
