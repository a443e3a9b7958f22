#include "spec/scan.h"

#include <fmt/format.h>

#include <string_view>

#include "base/files.h"
#include "base/text.h"

namespace furnish {
namespace {
SourceSpan one_character(const SourceText& source, std::uint32_t file, std::size_t byte) {
  const Position at = source.position(byte);
  return {file, at, {at.line, at.column + 1}};
}

bool report_encoding(const SourceText& source, std::uint32_t file, DiagnosticSink& sink) {
  const std::string_view text = source.text();
  if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF")) {
    sink.error("encoding", {file, {}, {}}, "is UTF-16 text; UTF-8 is read").hint =
        "save the file again, with UTF-8 as its encoding";
    return true;
  }
  const auto bad = first_bad_utf8(text);
  if (!bad) return false;
  sink.error("encoding", one_character(source, file, *bad),
             fmt::format("byte 0x{:02X} is not UTF-8", static_cast<unsigned char>(text[*bad])))
      .hint = "save the file again, with UTF-8 as its encoding";
  return true;
}

bool report_control(const SourceText& source, std::uint32_t file, DiagnosticSink& sink) {
  const std::string_view text = source.text();
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto c = static_cast<unsigned char>(text[i]);
    const bool line_end = c == '\n' || (c == '\r' && i + 1 < text.size() && text[i + 1] == '\n');
    if (c == '\t' || line_end || (c >= 0x20 && c != 0x7F)) continue;
    sink.error("control-character", one_character(source, file, i),
               fmt::format("control character U+{:04X} in the text", c))
        .hint = "take it out; only tabs and line ends may stand in a file";
    return true;
  }
  return false;
}

/// Follows strings, comments and brackets just far enough to count what lies outside of strings.
class Outline {
 public:
  Outline(const SourceText& source, std::uint32_t file, DiagnosticSink& sink)
      : source_(source), text_(source.text()), file_(file), sink_(sink) {}

  std::optional<LineStarts> run() {
    std::vector<bool> clean{true};
    for (std::size_t i = 0; i < text_.size();) {
      if (text_[i] == '\n') {
        if (!multi_line_) quote_ = 0;
        comment_ = false;
        dots_ = 0;
        clean.push_back(depth_ == 0 && quote_ == 0);
        ++i;
      } else {
        i += comment_ ? 1 : quote_ != 0 ? inside(i) : outside(i);
      }
      if (failed_) return std::nullopt;
    }
    return LineStarts(std::move(clean));
  }

 private:
  bool triple(std::size_t i) const { return text_.substr(i, 3) == std::string(3, text_[i]); }

  /// Bytes taken.
  std::size_t inside(std::size_t i) {
    if (text_[i] == '\\' && quote_ == '"') {
      const bool at_line_end = i + 1 < text_.size() && text_[i + 1] == '\n';
      return at_line_end ? 1 : 2;
    }
    if (text_[i] != quote_) return 1;
    if (!multi_line_) {
      quote_ = 0;
      return 1;
    }
    if (!triple(i)) return 1;
    // Up to two quotes may stand before the closing three.
    std::size_t n = 3;
    while (n < 5 && i + n < text_.size() && text_[i + n] == quote_) ++n;
    quote_ = 0;
    multi_line_ = false;
    return n;
  }

  std::size_t outside(std::size_t i) {
    const char c = text_[i];
    if (c == '"' || c == '\'') {
      quote_ = c;
      multi_line_ = triple(i);
      return multi_line_ ? 3 : 1;
    }
    if (c == '#') comment_ = true;
    if (c == '.' && ++dots_ > most_dots_in_a_line) {
      fail(i, fmt::format("more than {} dots in one line", most_dots_in_a_line));
    }
    if ((c == '[' || c == '{') && ++depth_ > deepest_nesting) {
      fail(i, fmt::format("brackets nested more than {} deep", deepest_nesting));
    }
    if ((c == ']' || c == '}') && depth_ > 0) --depth_;
    return 1;
  }

  void fail(std::size_t byte, std::string message) {
    sink_.error("too-deep", one_character(source_, file_, byte), std::move(message));
    failed_ = true;
  }

  const SourceText& source_;
  std::string_view text_;
  std::uint32_t file_;
  DiagnosticSink& sink_;
  char quote_ = 0;  ///< of the string we are in; 0 outside
  bool multi_line_ = false, comment_ = false, failed_ = false;
  std::size_t dots_ = 0, depth_ = 0;
};
}  // namespace

std::optional<LineStarts> scan_text(const SourceText& source, std::uint32_t file,
                                    DiagnosticSink& sink, std::size_t most) {
  if (source.text().size() > most) {
    sink.error("too-large", {file, {}, {}},
               fmt::format("has {} bytes; at most {} ({} KiB) are read", source.text().size(), most,
                           most / 1024));
    return std::nullopt;
  }
  if (report_encoding(source, file, sink)) return std::nullopt;
  if (report_control(source, file, sink)) return std::nullopt;
  return Outline(source, file, sink).run();
}
}  // namespace furnish
