#include "base/diagnostic.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <tuple>

#include "base/text.h"

namespace furnish {
namespace {
constexpr std::size_t widest_line = 120;  // code points; a longer line is shown around the fault

std::string place(const SourceSpan& span, const SourceSet& sources) {
  if (span.file == SourceSpan::no_file) return "furnish";
  const std::string path = visible(sources.at(span.file).path());
  if (span.begin.line == 0) return path;
  return fmt::format("{}:{}:{}", path, span.begin.line, span.begin.column);
}

/// Bold, and red or magenta, which are read on white and on black (ECMA-48, 8.3.117).
std::string painted(std::string_view text, Severity level, Colours colours) {
  if (colours == Colours::none) return std::string(text);
  return fmt::format("\x1b[1;{}m{}\x1b[0m", level == Severity::error ? 31 : 35, text);
}

/// The line of the span and carets under it; a tab stays a tab, so that the carets stand right.
std::string excerpt(const SourceSpan& span, const SourceSet& sources, Severity level,
                    Colours colours) {
  if (span.file == SourceSpan::no_file || span.begin.line == 0) return {};
  const std::string_view line = sources.at(span.file).line(span.begin.line);
  const std::size_t length = code_points(line);
  const std::size_t from = std::min<std::size_t>(span.begin.column - 1, length);
  std::size_t to = span.end.line == span.begin.line ? span.end.column - 1 : length;
  to = std::clamp(to, from + 1, std::max(length, from + 1));
  const std::size_t first = from > widest_line / 2 ? from - widest_line / 2 : 0;
  const std::size_t last = std::min(length, first + widest_line);
  to = std::min(to, std::max(last, from + 1));
  const auto slice = [&](std::size_t a, std::size_t b) {
    const std::size_t begin = byte_of_code_point(line, a);
    return visible(line.substr(begin, byte_of_code_point(line, b) - begin));
  };
  std::string gap;
  for (const char c : slice(first, from)) {
    if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U) gap += c == '\t' ? '\t' : ' ';
  }
  return fmt::format(
      "  {}{}{}\n  {}{}{}\n", first > 0 ? "…" : "", slice(first, last), last < length ? "…" : "",
      first > 0 ? " " : "", gap,
      painted(std::string(std::max(to - from, code_points(slice(from, to))), '^'), level, colours));
}
}  // namespace

Diagnostic& DiagnosticSink::error(std::string_view code, SourceSpan at, std::string message) {
  return list_.emplace_back(
      Diagnostic{Severity::error, std::string(code), at, std::move(message), {}, {}});
}

Diagnostic& DiagnosticSink::warning(std::string_view code, SourceSpan at, std::string message) {
  return list_.emplace_back(
      Diagnostic{Severity::warning, std::string(code), at, std::move(message), {}, {}});
}

void DiagnosticSink::take(DiagnosticSink& other) {
  list_.insert(list_.end(), std::make_move_iterator(other.list_.begin()),
               std::make_move_iterator(other.list_.end()));
  other.list_.clear();
}

std::size_t DiagnosticSink::error_count() const {
  return forgotten_errors_ + static_cast<std::size_t>(
                                 std::ranges::count(list_, Severity::error, &Diagnostic::severity));
}

void DiagnosticSink::forget() {
  forgotten_errors_ = error_count();
  list_.clear();
}

std::string to_text(const Diagnostic& diagnostic, const SourceSet& sources, Colours colours) {
  const Severity level = diagnostic.severity;
  const std::string_view word = level == Severity::error ? "error" : "warning";
  std::string out = fmt::format("{}: {}: {}\n", place(diagnostic.span, sources),
                                painted(word, level, colours), visible(diagnostic.message));
  out += excerpt(diagnostic.span, sources, level, colours);
  for (const auto& [span, text] : diagnostic.notes) {
    out += fmt::format("{}: note: {}\n", place(span, sources), visible(text));
    out += excerpt(span, sources, level, colours);
  }
  if (!diagnostic.hint.empty()) out += fmt::format("  hint: {}\n", visible(diagnostic.hint));
  return out;
}

std::vector<Diagnostic> in_reading_order(std::span<const Diagnostic> list) {
  std::vector<Diagnostic> sorted(list.begin(), list.end());
  std::ranges::stable_sort(sorted, {}, [](const Diagnostic& d) {
    return std::tuple(d.span.file != SourceSpan::no_file, d.span.file, d.span.begin);
  });
  return sorted;
}
}  // namespace furnish
