#include "app/console.h"

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <system_error>

namespace furnish {

void Console::show_reports() {
  const auto fresh = sink_.all().subspan(shown_);
  for (const Diagnostic& diagnostic : in_reading_order(fresh)) {
    const std::string text = to_text(diagnostic, sources_);
    std::fwrite(text.data(), 1, text.size(), stderr);
  }
  shown_ = sink_.all().size();
}

void Console::say(std::string_view line) const {
  if (quiet_) return;
  std::fwrite(line.data(), 1, line.size(), stdout);
  std::fputc('\n', stdout);
}

bool Console::delivered() const {
  errno = 0;
  if (std::fflush(stdout) == 0 && std::ferror(stdout) == 0) return true;
  const int code = errno == 0 ? EIO : errno;
  std::fprintf(stderr, "furnish: error: cannot write to the standard output: %s\n",
               std::system_category().message(code).c_str());
  return false;
}

bool Console::any_warning() const {
  return std::ranges::any_of(sink_.all(),
                             [](const Diagnostic& d) { return d.severity == Severity::warning; });
}
}  // namespace furnish
