#include "app/console.h"

#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <map>
#include <set>
#include <string>
#include <system_error>
#include <tuple>
#include <vector>

#include "trade/safety.h"

namespace furnish {
namespace {
/// Gravest first: a caution begins with its signal word.
std::size_t gravity(const Diagnostic& one) {
  const auto words = signal_words();
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (one.message.starts_with(words[i])) return i;
  }
  return words.size();
}

/// A warning in one line, and how often the same is said of other places.
std::string line(const Diagnostic& one, std::size_t more, const SourceSet& sources) {
  const std::string all = to_text(one, sources);
  const std::string first = all.substr(0, all.find('\n'));
  return more == 0 ? first + "\n" : fmt::format("{} (and {} more)\n", first, more);
}
}  // namespace

void Console::show_reports() {
  const auto fresh = sink_.all().subspan(shown_);
  std::vector<Diagnostic> all = in_reading_order(fresh);
  if (brief_) {
    std::ranges::stable_sort(all, {}, [](const Diagnostic& one) {
      const bool error = one.severity == Severity::error;
      return std::tuple(!error, error ? 0 : one.span.file, error ? 0 : gravity(one));
    });
  }
  std::map<std::string_view, std::size_t> times;
  for (const Diagnostic& one : all) ++times[one.message];
  std::set<std::string_view> told;
  for (const Diagnostic& one : all) {
    const bool in_full = !brief_ || one.severity == Severity::error;
    if (!in_full && !told.insert(one.message).second) continue;
    const std::string text =
        in_full ? to_text(one, sources_) : line(one, times.at(one.message) - 1, sources_);
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
