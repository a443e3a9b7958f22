#pragma once

#include <chrono>
#include <cstddef>
#include <string>
#include <string_view>

namespace furnish {

/// One line on a terminal's standard error that says how far a run of many has come. It appears
/// after a second, is written over, and leaves nothing behind; elsewhere it never appears.
class Progress {
 public:
  using Clock = std::chrono::steady_clock;
  /// `shown`: there is a terminal to show it on.
  explicit Progress(bool shown) : shown_(shown) {}
  void expect(std::size_t total);
  /// One more is begun.
  void at(std::string_view name);
  /// Takes the line away, so that something else may be said.
  void clear();

 private:
  bool shown_, drawn_ = false;
  std::size_t total_ = 0, begun_ = 0;
  Clock::time_point start_, last_;
};

/// "12 of 500, 40 s left: marlow", cut to so many columns. `done` are finished after `spent`.
std::string progress_line(std::size_t done, std::size_t total, std::chrono::milliseconds spent,
                          std::string_view name, std::size_t columns);
}  // namespace furnish
