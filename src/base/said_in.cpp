#include "base/said_in.h"

#include <array>

namespace furnish {
namespace {
constexpr char32_t tag_begins = 0xE0001, tag_ends = 0xE007F, first_letter = 0xE0020,
                   last_letter = 0xE007E;
/// In UTF-8 each of them has four bytes, the first two alike.
constexpr std::size_t letter_size = 4;
constexpr std::string_view letter_starts = "\xF3\xA0";

char32_t letter_at(std::string_view text) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]) & 0x3FU; };
  return 0xE0000U | byte(2) << 6U | byte(3);
}

bool of_a_tag(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-';
}
}  // namespace

std::string said_in(std::string_view language, std::string_view text) {
  std::string_view before, after;
  constexpr std::string_view isolate_ends = "\u2069";
  for (const std::string_view isolate : {"\u2066", "\u2067", "\u2068"}) {
    if (!text.starts_with(isolate) || !text.ends_with(isolate_ends)) continue;
    before = text.substr(0, isolate.size());
    after = isolate_ends;
    text = text.substr(before.size(), text.size() - before.size() - after.size());
    break;
  }
  std::string out(before);
  out += language_begins;
  for (const char c : language) {
    out += letter_starts;
    out += static_cast<char>(0x80 | static_cast<unsigned char>(c) >> 6);
    out += static_cast<char>(0x80 | (static_cast<unsigned char>(c) & 0x3F));
  }
  out += text;
  out += language_ends;
  return out += after;
}

std::size_t language_mark(std::string_view text) {
  if (!text.starts_with(language_begins)) return 0;
  std::size_t at = language_begins.size();
  while (text.substr(at).starts_with(letter_starts) && text.size() - at >= letter_size) {
    const char32_t c = letter_at(text.substr(at));
    if (c < first_letter || c > last_letter) break;
    at += letter_size;
  }
  return at;
}

std::string without_languages(std::string_view text) {
  std::string out;
  while (!text.empty()) {
    if (const std::size_t mark = language_mark(text); mark > 0) {
      text.remove_prefix(mark);
    } else if (text.starts_with(language_ends)) {
      text.remove_prefix(language_ends.size());
    } else {
      out += text.front();
      text.remove_prefix(1);
    }
  }
  return out;
}

bool LanguageMarks::take(char32_t c) {
  if (c == tag_begins) {
    language_.clear();
    return reading_ = true;
  }
  if (reading_ && c >= first_letter && c <= last_letter) {
    language_ += static_cast<char>(c - 0xE0000);
    return true;
  }
  if (reading_) {
    constexpr std::size_t longest = 35;  // that a program must take (RFC 5646, 4.4.1)
    for (const char letter : language_) {
      if (!of_a_tag(letter)) language_.clear();
    }
    if (language_.size() > longest) language_.clear();
  }
  reading_ = false;
  if (c != tag_ends) return false;
  language_.clear();
  return true;
}
}  // namespace furnish
