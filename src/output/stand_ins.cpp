#include "output/stand_ins.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>

#include "page/prepared_text.h"

namespace furnish {
namespace {
constexpr char32_t latin = 0xF000;            ///< 256 of them, for U+0000 to U+00FF
constexpr char32_t joined = 0xF100;           ///< as many as there are ligatures
constexpr std::string_view row_end = "> <f";  // of "<0001> <f041>", as cairo writes it

/// The ligatures that every Arabic font has: a lam and the alef after it.
constexpr std::array<std::u32string_view, 4> ligatures{U"\u0644\u0622", U"\u0644\u0623",
                                                       U"\u0644\u0625", U"\u0644\u0627"};

/// In hexadecimal UTF-16; empty if it is no stand-in. Any space is a space.
std::string meaning(char32_t c) {
  constexpr char32_t no_break_space = 0xA0;
  if (c >= joined && c < joined + ligatures.size()) {
    const std::u32string_view letters = ligatures[c - joined];
    return fmt::format("{:04x}{:04x}", static_cast<unsigned>(letters[1]),
                       static_cast<unsigned>(letters[0]));
  }
  if (c < latin || c >= joined) return {};
  return fmt::format("{:04x}",
                     static_cast<unsigned>(c == latin + no_break_space ? U' ' : c - latin));
}
}  // namespace

std::string as_utf8(std::u32string_view letters) {
  std::string text;
  for (const char32_t c : letters) append(text, c);
  return text;
}

std::string stand_in(std::u32string_view letters) {
  std::string text;
  const auto ligature = std::ranges::find(ligatures, letters);
  if (ligature != ligatures.end()) {
    append(text, joined + static_cast<char32_t>(ligature - ligatures.begin()));
  } else if (letters.size() == 1 && letters.front() < 0x100) {
    append(text, latin + letters.front());
  } else {
    return as_utf8(letters);
  }
  return text;
}

std::string without_stand_ins(std::string_view to_unicode) {
  std::string out;
  std::size_t copied = 0;
  for (auto at = to_unicode.find(row_end); at != std::string_view::npos;
       at = to_unicode.find(row_end, at + 1)) {
    const std::size_t begin = at + row_end.size() - 1, end = to_unicode.find('>', begin);
    if (end != begin + 4) continue;
    unsigned code = 0;
    std::from_chars(to_unicode.data() + begin, to_unicode.data() + end, code, 16);
    const std::string means = meaning(code);
    if (means.empty()) continue;
    out += to_unicode.substr(copied, begin - copied);
    out += means;
    copied = end;
  }
  if (copied > 0) out += to_unicode.substr(copied);
  return out;
}
}  // namespace furnish
