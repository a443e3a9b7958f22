#include "app/console.h"

#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <map>
#include <set>
#include <string>
#include <system_error>
#include <tuple>
#include <utility>
#include <vector>

#include "app/made_record.h"
#include "app/terminal.h"
#include "base/text.h"
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

/// Without the codes by which to_text() makes a terminal paint.
std::string without_colours(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    const auto code = text.find("\x1b[");
    out += text.substr(0, code);
    if (code == text.npos) break;
    text.remove_prefix(text.find('m', code) + 1);
  }
  return out;
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
  std::erase_if(all, [&](const Diagnostic& one) {
    return !one.once.empty() && !said_once_.insert(one.once).second;
  });
  if (brief_) {
    std::ranges::stable_sort(all, {}, [](const Diagnostic& one) {
      const bool error = one.severity == Severity::error;
      return std::tuple(!error, error ? 0 : one.span.file, error ? 0 : gravity(one));
    });
  }
  // Of another day the same words say something else.
  const auto alike = [&](const Diagnostic& one) {
    const bool placed = one.span.file != SourceSpan::no_file;
    const bool of_a_day =
        placed &&
        std::filesystem::path(sources_.at(one.span.file).path()).parent_path().filename() == "days";
    return std::pair(of_a_day ? one.span.file : SourceSpan::no_file, std::string_view(one.message));
  };
  using Alike = std::pair<std::uint32_t, std::string_view>;
  std::map<Alike, std::size_t> times;
  for (const Diagnostic& one : all) ++times[alike(one)];
  std::set<Alike> told;
  for (const Diagnostic& one : all) {
    const bool in_full = !brief_ || one.severity == Severity::error;
    if (!in_full && !told.insert(alike(one)).second) continue;
    const std::string text = in_full ? to_text(one, sources_, colours)
                                     : line(one, times.at(alike(one)) - 1, sources_, colours);
    std::fwrite(text.data(), 1, text.size(), stderr);
  }
  shown_ = sink_.all().size();
}

void Console::show_before(std::span<const SaidBefore> all) {
  const Colours colours = colours_of(stderr);
  for (const SaidBefore& one : all) {
    if (!one.once.empty() && !said_once_.insert(one.once).second) continue;
    progress_.clear();
    const std::string text = colours == Colours::none ? without_colours(one.text) : one.text;
    std::fwrite(text.data(), 1, text.size(), stderr);
    if (!one.once.empty() && !counted_once_.insert(one.once).second) continue;
    if (warnings_++ > 0) continue;
    const auto word = one.text.find("\x1b["), message = one.text.find(": ", word);
    // "furnish: error: " as it would stand here, without its place.
    const std::string_view nowhere = "furnish: ";
    const std::string strict =
        to_text({Severity::error, "strict", {}, {}, {}, {}}, sources_, colours);
    first_place_ = one.text.substr(0, word) +
                   strict.substr(nowhere.size(), strict.find('\n') - nowhere.size());
    first_words_ = one.text.substr(message + 2, one.text.find('\n') - message - 2);
  }
}

void Console::say(std::string_view line) {
  if (quiet_) return;
  progress_.clear();
  std::fwrite(line.data(), 1, line.size(), stdout);
  std::fputc('\n', stdout);
}

void Console::say_written(std::string_view path) {
  constexpr std::size_t many = 20;
  if (expected_ <= many || !can_rewrite(stdout)) say(visible(path));
}

void Console::close(std::size_t done, std::size_t faulty, std::size_t all) {
  progress_.clear();
  if (all < 2 || (faulty == 0 && !can_rewrite(stderr))) return;
  std::string line = fmt::format("{} of {}", done, all);
  if (faulty > 0) line += fmt::format("; {} with faults", faulty);
  std::fprintf(stderr, "%s\n", line.c_str());
}

void Console::count_warnings() {
  for (const Diagnostic& one : sink_.all().subspan(counted_)) {
    if (one.severity != Severity::warning) continue;
    if (!one.once.empty() && !counted_once_.insert(one.once).second) continue;
    if (warnings_++ > 0) continue;
    const std::string text =
        to_text({Severity::error, "strict", one.span, {}, {}, {}}, sources_, colours_of(stderr));
    first_place_ = text.substr(0, text.find('\n'));
    first_words_ = visible(one.message);
  }
  counted_ = sink_.all().size();
}

void Console::let_go(DiagnosticSink& sink) {
  count_warnings();
  sink.forget();
  shown_ = counted_ = 0;
}

void Console::tell_strict() {
  count_warnings();
  if (warnings_ == 0) return;
  const std::string why =
      warnings_ == 1
          ? "this warning counts as a fault (--strict)"
          : fmt::format("{} warnings count as faults (--strict), the first of them", warnings_);
  std::fprintf(stderr, "%s%s: %s\n", first_place_.c_str(), why.c_str(), first_words_.c_str());
}

bool Console::delivered() const {
  errno = 0;
  if (std::fflush(stdout) == 0 && std::ferror(stdout) == 0) return true;
  const int code = errno == 0 ? EIO : errno;
  std::fprintf(stderr, "furnish: error: cannot write to the standard output: %s\n",
               std::system_category().message(code).c_str());
  return false;
}

bool Console::any_warning() {
  count_warnings();
  return warnings_ > 0;
}
}  // namespace furnish
