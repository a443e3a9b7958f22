#include "app/progress.h"

#include <fmt/format.h>

#include <cstdio>

#include "app/terminal.h"
#include "base/text.h"

namespace furnish {
namespace {
constexpr std::chrono::milliseconds silent{1000}, between{100};

std::string left(std::chrono::milliseconds span) {
  const auto seconds = std::chrono::ceil<std::chrono::seconds>(span).count();
  constexpr auto minute = 60;
  if (seconds < 2 * minute) return fmt::format("{} s left", seconds);
  return fmt::format("{} min left", (seconds + minute / 2) / minute);
}
}  // namespace

std::string progress_line(std::size_t done, std::size_t total, std::chrono::milliseconds spent,
                          std::string_view name, std::size_t columns) {
  std::string out = fmt::format("{} of {}", done, total);
  if (done > 0) {
    const auto each = spent / static_cast<std::chrono::milliseconds::rep>(done);
    out += ", " + left(each * static_cast<std::chrono::milliseconds::rep>(total - done));
  }
  out += ": " + visible(name);
  // Where it would fill the last column, a terminal may go on to the next line.
  if (code_points(out) >= columns) out.resize(byte_of_code_point(out, columns - 1));
  return out;
}

void Progress::expect(std::size_t total) {
  clear();
  total_ = total;
  begun_ = 0;
  start_ = Clock::now();
}

void Progress::at(std::string_view name) {
  const std::size_t done = begun_++;
  if (!shown_ || total_ < 2) return;
  const auto now = Clock::now();
  if (now - start_ < silent || (drawn_ && now - last_ < between)) return;
  const auto spent = std::chrono::duration_cast<std::chrono::milliseconds>(now - start_);
  const std::string line = progress_line(done, total_, spent, name, columns_of(stderr));
  std::fprintf(stderr, "\r\x1b[K%s", line.c_str());
  std::fflush(stderr);
  drawn_ = true;
  last_ = now;
}

void Progress::clear() {
  if (!drawn_) return;
  std::fputs("\r\x1b[K", stderr);
  std::fflush(stderr);
  drawn_ = false;
}
}  // namespace furnish
