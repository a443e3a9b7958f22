#include "base/text.h"

#include <algorithm>
#include <numeric>

namespace furnish {
namespace {
bool continuation(char c) {
  return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

bool is_space(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

/// Length of the well-formed sequence at the start of `s`, 0 if there is none (Unicode, table 3-7).
std::size_t sequence(std::string_view s) {
  const auto at = [&](std::size_t i) {
    return i < s.size() ? static_cast<unsigned char>(s[i]) : 0U;
  };
  const auto in = [](unsigned v, unsigned low, unsigned high) { return v >= low && v <= high; };
  const unsigned a = at(0);
  const bool two = in(at(1), 0x80, 0xBF), three = in(at(2), 0x80, 0xBF),
             four = in(at(3), 0x80, 0xBF);
  if (a < 0x80) return 1;
  if (in(a, 0xC2, 0xDF)) return two ? 2 : 0;
  if (a == 0xE0) return in(at(1), 0xA0, 0xBF) && three ? 3 : 0;
  if (a == 0xED) return in(at(1), 0x80, 0x9F) && three ? 3 : 0;
  if (in(a, 0xE1, 0xEF)) return two && three ? 3 : 0;
  if (a == 0xF0) return in(at(1), 0x90, 0xBF) && three && four ? 4 : 0;
  if (in(a, 0xF1, 0xF3)) return two && three && four ? 4 : 0;
  if (a == 0xF4) return in(at(1), 0x80, 0x8F) && three && four ? 4 : 0;
  return 0;
}
}  // namespace

std::size_t code_points(std::string_view utf8) {
  return static_cast<std::size_t>(
      std::ranges::count_if(utf8, [](char c) { return !continuation(c); }));
}

std::size_t byte_of_code_point(std::string_view utf8, std::size_t n) {
  std::size_t i = 0;
  for (; i < utf8.size(); ++i) {
    if (continuation(utf8[i])) continue;
    if (n-- == 0) break;
  }
  return i;
}

std::optional<std::size_t> first_bad_utf8(std::string_view bytes) {
  for (std::size_t i = 0; i < bytes.size();) {
    const std::size_t step = sequence(bytes.substr(i));
    if (step == 0) return i;
    i += step;
  }
  return std::nullopt;
}

std::string_view trimmed(std::string_view s) {
  while (!s.empty() && is_space(s.front())) s.remove_prefix(1);
  while (!s.empty() && is_space(s.back())) s.remove_suffix(1);
  return s;
}

std::string lower_ascii(std::string_view s) {
  std::string out(s);
  for (char& c : out) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return out;
}

namespace {
/// Latin, Greek and Cyrillic letters as far as capitalised() goes; others as they are.
unsigned upper_case(unsigned code) {
  const bool latin = code >= 0xE0 && code <= 0xFE && code != 0xF7;
  const bool greek = code >= 0x3B1 && code <= 0x3C9 && code != 0x3C2;
  const bool cyrillic = code >= 0x430 && code <= 0x44F;
  if (latin || greek || cyrillic) return code - 0x20;
  // Of these pairs the capital is the even one: "đ" and the Vietnamese letters with two marks.
  const bool even_capital = (code >= 0x100 && code <= 0x137 && code != 0x131) ||
                            (code >= 0x14A && code <= 0x177) || code == 0x1A1 ||
                            (code >= 0x1EA0 && code <= 0x1EF9);
  if (even_capital) return code & ~1U;
  return code == 0x1B0 ? 0x1AF : code;
}
}  // namespace

std::string capitalised(std::string_view s) {
  // A mark that gives what follows its own direction is no letter.
  constexpr std::array<std::string_view, 3> isolates{"\u2066", "\u2067", "\u2068"};
  std::string out(s);
  std::size_t at = 0;
  for (const std::string_view mark : isolates) {
    if (s.starts_with(mark)) at = mark.size();
  }
  if (at == out.size()) return out;
  const std::size_t length = sequence(s.substr(at));
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(out[at + i]); };
  if (length == 1 && out[at] >= 'a' && out[at] <= 'z') {
    out[at] = static_cast<char>(out[at] - 'a' + 'A');
  } else if (length == 2) {
    const unsigned upper = upper_case((byte(0) & 0x1FU) << 6U | (byte(1) & 0x3FU));
    out[at] = static_cast<char>(0xC0U | (upper >> 6U));
    out[at + 1] = static_cast<char>(0x80U | (upper & 0x3FU));
  } else if (length == 3) {
    const unsigned upper =
        upper_case((byte(0) & 0x0FU) << 12U | (byte(1) & 0x3FU) << 6U | (byte(2) & 0x3FU));
    out[at] = static_cast<char>(0xE0U | (upper >> 12U));
    out[at + 1] = static_cast<char>(0x80U | ((upper >> 6U) & 0x3FU));
    out[at + 2] = static_cast<char>(0x80U | (upper & 0x3FU));
  }
  return out;
}

std::string uncapitalised(std::string_view s) {
  return lower_ascii(s.substr(0, 1)) + std::string(s.substr(std::min<std::size_t>(1, s.size())));
}

std::string joined(std::span<const std::string> parts, std::string_view between) {
  std::string out;
  for (const std::string& part : parts) {
    if (&part != parts.data()) out += between;
    out += part;
  }
  return out;
}

std::string listed(std::span<const std::string> parts, std::string_view last) {
  if (parts.size() < 2) return joined(parts, "");
  return joined(parts.first(parts.size() - 1), ", ") + std::string(last) + parts.back();
}

std::size_t edit_distance(std::string_view a, std::string_view b) {
  // Optimal string alignment: three rows are enough to see a swap of neighbours.
  std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), now(b.size() + 1);
  std::iota(last.begin(), last.end(), std::size_t{0});
  for (std::size_t i = 1; i <= a.size(); ++i) {
    now[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t change = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      now[j] = std::min({last[j] + 1, now[j - 1] + 1, change});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
        now[j] = std::min(now[j], before[j - 2] + 1);
      }
    }
    std::swap(before, last);
    std::swap(last, now);
  }
  return last[b.size()];
}

std::optional<std::string_view> nearest(std::string_view word,
                                        std::span<const std::string_view> candidates,
                                        std::size_t limit) {
  if (word.size() > 64) return std::nullopt;
  std::optional<std::string_view> best;
  std::size_t fewest = std::min(limit + 1, std::max<std::size_t>(word.size(), 1));
  for (const std::string_view candidate : candidates) {
    const std::size_t edits = edit_distance(word, candidate);
    if (edits < fewest) {
      fewest = edits;
      best = candidate;
    }
  }
  return best;
}
}  // namespace furnish
