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

#include "app/terminal.h"
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
std::string line(const Diagnostic& one, std::size_t more, const SourceSet& sources,
                 Colours colours) {
  const std::string all = to_text(one, sources, colours);
  const std::string first = all.substr(0, all.find('\n'));
  return more == 0 ? first + "\n" : fmt::format("{} (and {} more)\n", first, more);
}
}  // namespace

Console::Console(const SourceSet& sources, const DiagnosticSink& sink, bool quiet_output)
    : sources_(sources), sink_(sink), quiet_(quiet_output), progress_(can_rewrite(stderr)) {}

void Console::show_reports() {
  const auto fresh = sink_.all().subspan(shown_);
  if (fresh.empty()) return;
  progress_.clear();
  const Colours colours = colours_of(stderr);
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
    const std::string text = in_full ? to_text(one, sources_, colours)
                                     : line(one, times.at(one.message) - 1, sources_, colours);
    std::fwrite(text.data(), 1, text.size(), stderr);
  }
  shown_ = sink_.all().size();
}

void Console::say(std::string_view line) {
  if (quiet_) return;
  progress_.clear();
  std::fwrite(line.data(), 1, line.size(), stdout);
  std::fputc('\n', stdout);
}

void Console::say_written(std::string_view path) {
  constexpr std::size_t many = 20;
  if (expected_ <= many || !can_rewrite(stdout)) say(path);
}

void Console::close(std::size_t done, std::size_t all) {
  progress_.clear();
  if (all < 2 || (done == all && !can_rewrite(stderr))) return;
  std::string line = fmt::format("{} of {}", done, all);
  if (done < all) line += fmt::format("; {} with faults", all - done);
  std::fprintf(stderr, "%s\n", line.c_str());
}

void Console::tell_strict() const {
  std::size_t number = 0;
  const Diagnostic* first = nullptr;
  for (const Diagnostic& one : sink_.all()) {
    if (one.severity != Severity::warning) continue;
    ++number;
    if (first == nullptr) first = &one;
  }
  if (first == nullptr) return;
  const std::string why =
      number == 1
          ? "this warning counts as a fault (--strict)"
          : fmt::format("{} warnings count as faults (--strict), the first of them", number);
  const std::string text = to_text(
      {Severity::error, "strict", first->span, fmt::format("{}: {}", why, first->message), {}, {}},
      sources_, colours_of(stderr));
  std::fwrite(text.data(), 1, text.find('\n') + 1, stderr);
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
