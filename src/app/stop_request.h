#pragma once

#include <csignal>

namespace furnish {

/// While it lives, Ctrl-C, a polite request to end and a terminal that closes (SIGINT, SIGTERM,
/// SIGHUP) wait, so that the sheet in hand is finished; who makes many asks between them whether to
/// go on. One that nobody took is delivered at the end of the scope.
class StopRequest {
 public:
  StopRequest();
  StopRequest(const StopRequest&) = delete;
  StopRequest& operator=(const StopRequest&) = delete;
  ~StopRequest();
  /// Whether there was one; it counts as taken then.
  bool taken();
  /// Readable once there was one, for poll(); -1 if the system gives none.
  int descriptor();

 private:
  ::sigset_t asked_{}, before_{};
  bool taken_ = false;
  int descriptor_ = -1;
};
}  // namespace furnish
