#include "base/text.h"

#include <fmt/format.h>
#include <unicode/normalizer2.h>
#include <unicode/uchar.h>
#include <unicode/unistr.h>
#include <unicode/utf8.h>

#include <algorithm>
#include <array>
#include <iterator>
#include <numeric>

#include "base/said_in.h"

namespace furnish {
namespace {
bool continuation(char c) {
  return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
}

bool is_space(char c) {
  return c == ' ' || c == '\t' || c == '\n' || c == '\r';
}

// ICU's macro narrows on its way.
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wconversion"
/// The code point at byte `at`, which goes on past it; negative if there is none well formed
/// (Unicode, table 3-7).
UChar32 next_code_point(std::string_view s, std::size_t& at) {
  UChar32 code = 0;
  U8_NEXT(s, at, s.size(), code);
  return code;
}
#pragma GCC diagnostic pop

/// `s` with the code point that begins at byte `at` in the other case, by Unicode's simple mapping,
/// which no language changes.
std::string recased(std::string_view s, std::size_t at, UChar32 (*map)(UChar32)) {
  std::size_t end = at;
  const UChar32 code = next_code_point(s, end);
  const UChar32 other = map(code);
  if (code < 0 || other == code) return std::string(s);
  std::array<char, U8_MAX_LENGTH> bytes{};
  std::size_t length = 0;
  U8_APPEND_UNSAFE(bytes, length, other);
  std::string out(s.substr(0, at));
  out.append(bytes.data(), length);
  return out += s.substr(end);
}

/// A letter of braille without a dot, of which Unicode says that it is no white space.
constexpr UChar32 braille_blank = 0x2800;

bool turns(UChar32 code) {
  return (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069);
}

bool steers(UChar32 code) {
  const bool control = code < 0x20 || (code >= 0x7F && code < 0xA0);
  const bool mark = code == 0x061C || code == 0x200E || code == 0x200F || turns(code);
  return (control && code != '\t') || mark || code == 0x2028 || code == 0x2029;
}

/// With each character of which `which` is true as `as` writes its number.
std::string spelled(std::string_view utf8, bool (*which)(UChar32),
                    fmt::format_string<std::uint32_t> as) {
  std::string out;
  for (std::size_t i = 0; i < utf8.size();) {
    const std::size_t begin = i;
    const UChar32 code = next_code_point(utf8, i);
    if (code >= 0 && which(code)) {
      fmt::format_to(std::back_inserter(out), as, static_cast<std::uint32_t>(code));
    } else {
      out += utf8.substr(begin, i - begin);
    }
  }
  return out;
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
    const std::size_t begin = i;
    if (next_code_point(bytes, i) < 0) return begin;
  }
  return std::nullopt;
}

std::string_view trimmed(std::string_view s) {
  while (!s.empty() && is_space(s.front())) s.remove_prefix(1);
  while (!s.empty() && is_space(s.back())) s.remove_suffix(1);
  return s;
}

bool blank(std::string_view utf8) {
  for (std::size_t i = 0; i < utf8.size();) {
    const UChar32 code = next_code_point(utf8, i);
    if (code < 0) return false;
    const bool unseen = u_isUWhiteSpace(code) || code == braille_blank ||
                        u_hasBinaryProperty(code, UCHAR_DEFAULT_IGNORABLE_CODE_POINT);
    if (!unseen) return false;
  }
  return true;
}

std::string visible(std::string_view utf8) {
  return spelled(utf8, steers, "\\u{{{:X}}}");
}

std::string visible_json(std::string_view json) {
  // None that steers lies beyond four digits.
  const auto in_words = [](UChar32 code) { return code != '\n' && steers(code); };
  return spelled(json, in_words, "\\u{:04X}");
}

std::string visible_lines(std::string_view utf8) {
  std::string out;
  while (!utf8.empty()) {
    const std::size_t end = utf8.find('\n');
    out += visible(utf8.substr(0, end));
    if (end == std::string_view::npos) break;
    out += '\n';
    utf8.remove_prefix(end + 1);
  }
  return out;
}

bool turns_direction(std::string_view utf8) {
  for (std::size_t i = 0; i < utf8.size();) {
    if (turns(next_code_point(utf8, i))) return true;
  }
  return false;
}

bool turns_what_follows(std::string_view utf8) {
  constexpr UChar32 first_isolate = 0x2066, last_isolate = 0x2068, end_of_isolate = 0x2069,
                    end_of_embedding = 0x202C;
  int isolates = 0;
  for (std::size_t i = 0; i < utf8.size();) {
    const UChar32 code = next_code_point(utf8, i);
    if (code >= first_isolate && code <= last_isolate) ++isolates;
    if (code == end_of_isolate) isolates = std::max(0, isolates - 1);
    const bool embeds = turns(code) && code < first_isolate && code != end_of_embedding;
    if (embeds && isolates == 0) return true;
  }
  return false;
}

std::string lower_ascii(std::string_view s) {
  std::string out(s);
  for (char& c : out) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
  }
  return out;
}

std::string plain_letters(std::string_view utf8) {
  UErrorCode fault = U_ZERO_ERROR;
  const icu::Normalizer2* const parts = icu::Normalizer2::getNFKDInstance(fault);
  if (U_FAILURE(fault) != 0) return lower_ascii(utf8);
  icu::UnicodeString text = icu::UnicodeString::fromUTF8(
      icu::StringPiece(utf8.data(), static_cast<std::int32_t>(utf8.size())));
  text = parts->normalize(text.foldCase(), fault);
  icu::UnicodeString plain;
  for (std::int32_t i = 0; i < text.length(); i = text.moveIndex32(i, 1)) {
    const UChar32 code = text.char32At(i);
    if (u_charType(code) != U_NON_SPACING_MARK) plain.append(code);
  }
  std::string out;
  plain.toUTF8String(out);
  return out;
}

std::string capitalised(std::string_view s) {
  // Marks that give what follows its own direction or its language are no letters.
  constexpr std::array<std::string_view, 3> isolates{"\u2066", "\u2067", "\u2068"};
  std::size_t at = 0;
  for (const std::string_view mark : isolates) {
    if (s.starts_with(mark)) at = mark.size();
  }
  at += language_mark(s.substr(at));
  return at == s.size() ? std::string(s) : recased(s, at, u_totitle);
}

std::string uncapitalised(std::string_view s) {
  const std::size_t at = language_mark(s);
  return at == s.size() ? std::string(s) : recased(s, at, u_tolower);
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
    // So many letters it takes at least.
    const std::size_t shorter = std::min(word.size(), candidate.size());
    if (std::max(word.size(), candidate.size()) - shorter >= fewest) continue;
    const std::size_t edits = edit_distance(word, candidate);
    if (edits < fewest) {
      fewest = edits;
      best = candidate;
    }
  }
  return best;
}
}  // namespace furnish
