#include "spec/plain_document.h"

#include <algorithm>
#include <set>
#include <string_view>

#include "base/text.h"

namespace furnish {
namespace {
constexpr bool bare(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
         c == '_';
}

/// Takes a bare key from the front; empty if there is none.
std::string_view take_key(std::string_view& line) {
  const auto end = std::ranges::find_if_not(line, bare);
  const std::string_view key(line.begin(), end);
  line.remove_prefix(key.size());
  return key;
}

/// Whether a text stands as it is written: no escape, no quote, no control character.
bool plain(std::string_view text) {
  return std::ranges::none_of(text, [](char c) {
    return c == '\\' || c == '"' || static_cast<unsigned char>(c) < 0x20 || c == 0x7F;
  });
}

/// Reads a file line by line.
class Reader {
 public:
  explicit Reader(std::uint32_t file) : file_(file) {}

  bool take(std::string_view line, std::uint32_t number) {
    if (line.empty()) return true;
    if (line.front() == '#') return plain_remark(line);
    return line.front() == '[' ? heading(line, number) : text(line, number);
  }
  TomlTable take_tree() { return std::move(root_); }

 private:
  static bool plain_remark(std::string_view line) {
    return std::ranges::none_of(
        line, [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; });
  }

  SourceSpan span(std::uint32_t line, std::size_t from, std::size_t to) const {
    return {file_,
            {line, static_cast<std::uint32_t>(from + 1)},
            {line, static_cast<std::uint32_t>(to + 1)}};
  }

  bool heading(std::string_view line, std::uint32_t number) {
    const std::size_t whole = line.size();
    line.remove_prefix(1);
    const std::string_view key = take_key(line);
    if (key.empty() || line != "]" || !headings_.insert(key).second) return false;
    root_.push_back(
        {std::string(key), span(number, 1, 1 + key.size()), {TomlTable{}, span(number, 0, whole)}});
    keys_.clear();
    return true;
  }

  /// key = "text", the key in quotes or not.
  bool text(std::string_view line, std::uint32_t number) {
    constexpr std::string_view between = " = \"";
    const std::string_view whole = line;
    const bool quoted = line.starts_with('"');
    if (quoted) line.remove_prefix(1);
    const std::string_view key = quoted ? line.substr(0, line.find('"')) : take_key(line);
    if (quoted) line.remove_prefix(std::min(key.size() + 1, line.size()));
    const std::size_t behind_key = whole.size() - line.size();
    if (root_.empty() || key.empty() || !line.starts_with(between) ||
        line.size() == between.size() || !line.ends_with('"')) {
      return false;
    }
    const std::string_view value = line.substr(between.size(), line.size() - between.size() - 1);
    if (!plain(key) || !plain(value) || !keys_.insert(key).second) return false;
    const std::size_t key_end = code_points(whole.substr(0, behind_key));
    const std::size_t from = key_end + between.size() - 1;
    std::get<TomlTable>(root_.back().node.value)
        .push_back({std::string(key),
                    span(number, 0, key_end),
                    {std::string(value), span(number, from, from + code_points(value) + 2)}});
    return true;
  }

  std::uint32_t file_;
  TomlTable root_;
  std::set<std::string_view> headings_, keys_;
};
}  // namespace

std::optional<TomlTable> plain_document(const SourceText& source, std::uint32_t file) {
  Reader reader(file);
  std::string_view rest = source.text();
  for (std::uint32_t number = 1; !rest.empty(); ++number) {
    const std::size_t end = std::min(rest.find('\n'), rest.size());
    if (!reader.take(rest.substr(0, end), number)) return std::nullopt;
    rest.remove_prefix(std::min(end + 1, rest.size()));
  }
  return reader.take_tree();
}
}  // namespace furnish
