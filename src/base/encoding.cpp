#include "base/encoding.h"

#include <unicode/unistr.h>
#include <unicode/utf16.h>

#include <algorithm>
#include <cstdint>
#include <optional>

#include "base/text.h"

namespace furnish {
namespace {
constexpr std::string_view utf8_mark = "\xEF\xBB\xBF", big_mark = "\xFE\xFF",
                           little_mark = "\xFF\xFE";
constexpr std::string_view replacement = "\uFFFD";

enum class Order : std::uint8_t { little, big };

/// Of the first bytes, so many at odd and even places are zero as only UTF-16 of Latin letters has
/// it: nearly all of one kind, none of the other.
std::optional<Order> order_by_zeros(std::string_view bytes) {
  const std::string_view begin = bytes.substr(0, 512);
  std::size_t zeros[2] = {0, 0};
  for (std::size_t i = 0; i < begin.size(); ++i) zeros[i % 2] += begin[i] == '\0';
  const std::size_t many = begin.size() / 8;
  if (begin.size() < 4 || zeros[0] + zeros[1] <= many) return std::nullopt;
  return zeros[1] > zeros[0] ? Order::little : Order::big;
}

DecodedText from_utf16(std::string_view bytes, Order order) {
  const auto unit = [&](std::size_t at) {
    const auto first = static_cast<unsigned char>(bytes[at]);
    const auto second = static_cast<unsigned char>(bytes[at + 1]);
    return static_cast<char16_t>(order == Order::big ? first << 8 | second : second << 8 | first);
  };
  DecodedText out{{}, order == Order::big ? "UTF-16, high byte first" : "UTF-16"};
  const std::size_t whole = bytes.size() - bytes.size() % 2;
  for (std::size_t i = 0; i < whole; i += 2) {
    std::u16string one{unit(i)};
    if (U16_IS_LEAD(one[0]) && i + 2 < whole && U16_IS_TRAIL(unit(i + 2))) {
      one += unit(i += 2);
    } else if (U16_IS_SURROGATE(one[0])) {
      out.text += replacement;
      continue;
    }
    if (one[0] < 0x80) {
      out.text += static_cast<char>(one[0]);
    } else {
      icu::UnicodeString(one.data(), static_cast<std::int32_t>(one.size())).toUTF8String(out.text);
    }
  }
  if (whole != bytes.size()) out.text += replacement;
  return out;
}

/// Whether bytes that are not well formed are UTF-8 with a slip in it, rather than something else:
/// it has more letters of several bytes than bytes that are none.
bool mostly_utf8(std::string_view bytes) {
  std::size_t good = 0, bad = 0;
  while (!bytes.empty()) {
    const auto at = first_bad_utf8(bytes);
    const std::string_view fine = bytes.substr(0, at.value_or(bytes.size()));
    good += static_cast<std::size_t>(std::ranges::count_if(
        fine, [](char c) { return (static_cast<unsigned char>(c) >= 0xC0); }));
    if (!at) break;
    ++bad;
    bytes.remove_prefix(*at + 1);
  }
  return good > bad;
}

DecodedText from_utf8(std::string_view bytes) {
  DecodedText out{{}, "UTF-8"};
  while (const auto at = first_bad_utf8(bytes)) {
    out.text += bytes.substr(0, *at);
    out.text += replacement;
    bytes.remove_prefix(*at + 1);
  }
  out.text += bytes;
  return out;
}

DecodedText from_windows_1252(std::string_view bytes) {
  DecodedText out{{}, "Windows-1252"};
  icu::UnicodeString(bytes.data(), static_cast<std::int32_t>(bytes.size()), "windows-1252")
      .toUTF8String(out.text);
  return out;
}

DecodedText by_its_bytes(std::string_view bytes) {
  const auto after = [&](std::string_view mark) { return bytes.substr(mark.size()); };
  if (bytes.starts_with(utf8_mark)) return from_utf8(after(utf8_mark));
  if (bytes.starts_with(little_mark)) return from_utf16(after(little_mark), Order::little);
  if (bytes.starts_with(big_mark)) return from_utf16(after(big_mark), Order::big);
  if (const auto order = order_by_zeros(bytes)) return from_utf16(bytes, *order);
  return !first_bad_utf8(bytes) || mostly_utf8(bytes) ? from_utf8(bytes) : from_windows_1252(bytes);
}
}  // namespace

DecodedText decoded(std::string_view bytes) {
  DecodedText out = by_its_bytes(bytes);
  // An end of line of its own, as old systems have it.
  for (std::size_t i = 0; i < out.text.size(); ++i) {
    const bool alone = i + 1 == out.text.size() || out.text[i + 1] != '\n';
    if (out.text[i] == '\r' && alone) out.text[i] = '\n';
  }
  return out;
}
}  // namespace furnish
