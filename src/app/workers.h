#pragma once

#include <condition_variable>
#include <cstddef>
#include <deque>
#include <exception>
#include <functional>
#include <map>
#include <mutex>
#include <thread>
#include <vector>

namespace furnish {

/// Threads that work off 0, 1, 2 … and whose results are taken in that order by the thread that
/// made them.
class Workers {
 public:
  struct Work {
    std::size_t count = 0;
    std::size_t ahead = 1;  ///< no more are begun before the first of them is taken
    std::size_t threads = 1, waiters = 1;
    /// What is to be done, in one of `threads`, whose number is the first argument.
    std::function<void(std::size_t, std::size_t)> make;
    /// What then waits for the disk, in one of `waiters`.
    std::function<void(std::size_t)> keep;
  };

  explicit Workers(Work);
  Workers(const Workers&) = delete;
  Workers& operator=(const Workers&) = delete;
  /// Begins nothing more, and waits for what is in hand.
  ~Workers();

  /// Waits for a result; those before it are taken then. Throws what its own making threw: what was
  /// thrown of a later one keeps none before it.
  void wait_for(std::size_t number);

 private:
  void make(std::size_t thread);
  void keep();
  /// pre: locked.
  void finish(std::size_t number, const std::exception_ptr& fault);
  void end();

  Work work_;
  std::mutex mutex_;
  std::condition_variable may_begin_, may_keep_, done_;
  std::size_t begun_ = 0, taken_ = 0;
  std::deque<std::size_t> made_;                      ///< to be kept
  std::vector<bool> finished_;                        ///< by number modulo `ahead`
  std::map<std::size_t, std::exception_ptr> faults_;  ///< by number
  bool ending_ = false;
  std::vector<std::thread> threads_;
};

/// How many threads are worth it for so many sheets; `asked` 0: as many as there are cores.
std::size_t threads_for(std::size_t sheets, int asked);
}  // namespace furnish
