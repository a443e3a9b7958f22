#include "output/length_chains.h"

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <unordered_set>
#include <vector>

namespace furnish {
namespace {
/// What is broken by accident has a few; libqpdf says what is wrong with those.
constexpr std::ptrdiff_t few = 50;

constexpr bool digit(char c) {
  return c >= '0' && c <= '9';
}
constexpr bool space(char c) {
  return c == ' ' || c == '\n' || c == '\r' || c == '\t' || c == '\f' || c == '\0';
}
constexpr bool delimits(char c) {
  return space(c) || std::string_view("()<>[]{}/%").find(c) != std::string_view::npos;
}

void skip_space(std::string_view& rest) {
  while (!rest.empty()) {
    if (space(rest.front())) {
      rest.remove_prefix(1);
    } else if (rest.front() == '%') {
      rest.remove_prefix(std::min(rest.find_first_of("\r\n"), rest.size()));
    } else {
      return;
    }
  }
}

std::optional<std::uint64_t> take_number(std::string_view& rest) {
  constexpr std::size_t most = 12;
  std::uint64_t out = 0;
  std::size_t digits = 0;
  for (; digits < rest.size() && digits < most && digit(rest[digits]); ++digits) {
    out = out * 10 + static_cast<std::uint64_t>(rest[digits] - '0');
  }
  rest.remove_prefix(digits);
  if (digits == 0) return std::nullopt;
  return out;
}

std::optional<int> hex(char c) {
  if (digit(c)) return c - '0';
  const char low = static_cast<char>(c | 0x20);
  return low >= 'a' && low <= 'f' ? std::optional(low - 'a' + 10) : std::nullopt;
}

/// "Length" of "/L#65ngth", from behind its slash.
std::string take_name(std::string_view& rest) {
  constexpr std::size_t longest = 32;
  std::string out;
  while (!rest.empty() && !delimits(rest.front()) && out.size() < longest) {
    const auto high = rest.size() > 2 && rest.front() == '#' ? hex(rest[1]) : std::nullopt;
    const auto low = high ? hex(rest[2]) : std::nullopt;
    out.push_back(low ? static_cast<char>(*high * 16 + *low) : rest.front());
    rest.remove_prefix(low ? 3 : 1);
  }
  return out;
}

/// The number of the object that begins with "obj" here: "12 0 obj"; empty if none does.
std::optional<std::uint64_t> number_before(std::string_view before) {
  const auto drop = [&](auto what) {
    const std::size_t size = before.size();
    while (!before.empty() && what(before.back())) before.remove_suffix(1);
    return before.size() < size;
  };
  if (!drop(space) || !drop(digit) || !drop(space)) return std::nullopt;
  const std::size_t end = before.size();
  if (!drop(digit)) return std::nullopt;
  std::string_view number(before.data() + before.size(), end - before.size());
  return take_number(number);
}
}  // namespace

bool has_length_chains(std::string_view pdf) {
  std::unordered_set<std::uint64_t> no_numbers;
  for (std::size_t at = 0; (at = pdf.find("obj", at)) != std::string_view::npos; at += 3) {
    const auto number = number_before(pdf.substr(0, at));
    std::string_view rest = pdf.substr(at + 3);
    skip_space(rest);
    if (number && !rest.empty() && !digit(rest.front())) no_numbers.insert(*number);
  }
  std::ptrdiff_t chained = 0;
  for (std::size_t at = 0; (at = pdf.find('/', at)) != std::string_view::npos; ++at) {
    std::string_view rest = pdf.substr(at + 1);
    if (take_name(rest) != "Length") continue;
    skip_space(rest);
    const auto target = take_number(rest);
    skip_space(rest);
    const bool generation = target && take_number(rest);
    skip_space(rest);
    if (generation && rest.starts_with('R') && no_numbers.contains(*target)) ++chained;
  }
  return chained > few;
}
}  // namespace furnish
