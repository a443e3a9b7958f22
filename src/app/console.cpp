#include "app/console.h"

#include <algorithm>
#include <cstdio>

namespace furnish {

void Console::show_reports() {
  const auto fresh = sink_.all().subspan(shown_);
  for (const Diagnostic& diagnostic : in_reading_order(fresh)) {
    std::fputs(to_text(diagnostic, sources_).c_str(), stderr);
  }
  shown_ = sink_.all().size();
}

void Console::say(std::string_view line) const {
  if (quiet_) return;
  std::fwrite(line.data(), 1, line.size(), stdout);
  std::fputc('\n', stdout);
}

bool Console::any_warning() const {
  return std::ranges::any_of(sink_.all(),
                             [](const Diagnostic& d) { return d.severity == Severity::warning; });
}
}  // namespace furnish
