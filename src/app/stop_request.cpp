#include "app/stop_request.h"

#include <sys/signalfd.h>
#include <unistd.h>

#include <ctime>

namespace furnish {
StopRequest::StopRequest() {
  ::sigemptyset(&asked_);
  ::sigaddset(&asked_, SIGINT);
  ::sigaddset(&asked_, SIGTERM);
  struct sigaction now {};
  // nohup ignores it, for what is to outlive its terminal.
  if (::sigaction(SIGHUP, nullptr, &now) == 0 && now.sa_handler != SIG_IGN) {
    ::sigaddset(&asked_, SIGHUP);
  }
  ::pthread_sigmask(SIG_BLOCK, &asked_, &before_);
}

StopRequest::~StopRequest() {
  if (descriptor_ >= 0) ::close(descriptor_);
  ::pthread_sigmask(SIG_SETMASK, &before_, nullptr);
}

int StopRequest::descriptor() {
  if (descriptor_ < 0) descriptor_ = ::signalfd(-1, &asked_, SFD_CLOEXEC | SFD_NONBLOCK);
  return descriptor_;
}

bool StopRequest::taken() {
  const timespec no_wait{};
  // Where the caller ignores it, as in a job of the background, it never comes.
  if (::sigtimedwait(&asked_, nullptr, &no_wait) > 0) taken_ = true;
  return taken_;
}
}  // namespace furnish
