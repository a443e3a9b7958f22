#pragma once

#include <cstddef>
#include <functional>
#include <vector>

namespace furnish::test {

/// Numbers of the system's calls that something makes in a process of its own, in their order.
std::vector<long> calls_of(const std::function<void()>& something);
/// One of them: the `nth` of that number, from 0, before it is done or after.
struct CallPoint {
  long number = 0;
  std::size_t nth = 0;
  bool done = false;
};
/// The same, killed at that point. False if it ended before it came there.
bool killed_at(const CallPoint&, const std::function<void()>& something);
/// Whether one process may watch another's calls here.
bool can_watch_calls();
}  // namespace furnish::test
