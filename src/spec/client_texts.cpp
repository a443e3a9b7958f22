#include "spec/client_texts.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "base/fnv.h"
#include "base/text.h"
#include "spec/bounds.h"

namespace furnish {
namespace {
constexpr std::array<std::string_view, 6> separators{"\n", ";", "/", "+", "&", ","};
/// "Rex and Bella", in the languages of the catalogues.
constexpr std::array<std::string_view, 8> ands{" and ", " y ",  " et ", " und ",
                                               " e ",   " và ", " و ",  " u. "};
}  // namespace

std::vector<std::string> parts_of(std::string_view text, std::span<const std::string_view> at) {
  std::vector<std::string> out;
  std::size_t begin = 0;
  const auto take = [&](std::size_t end) {
    const std::string_view part = trimmed(text.substr(begin, end - begin));
    if (!part.empty()) out.emplace_back(part);
  };
  for (std::size_t i = 0; i < text.size();) {
    const auto cut = std::ranges::find_if(
        at, [&](std::string_view one) { return text.substr(i).starts_with(one); });
    if (cut == at.end()) {
      ++i;
      continue;
    }
    take(i);
    begin = i += cut->size();
  }
  take(text.size());
  return out;
}

std::vector<std::string> listed_parts(std::string_view text) {
  return parts_of(text, separators);
}

std::vector<std::string> named_parts(std::string_view text) {
  std::vector<std::string_view> at(separators.begin(), separators.end());
  at.insert(at.end(), ands.begin(), ands.end());
  return parts_of(text, at);
}

std::string on_one_line(std::string_view text) {
  constexpr std::array<std::string_view, 2> ends{"\r\n", "\n"};
  std::string out;
  for (const std::string& part : parts_of(text, ends)) {
    if (!out.empty()) out += " / ";
    out += part;
  }
  // Tabs are no letters of a key's text.
  std::ranges::replace(out, '\t', ' ');
  return out;
}

std::vector<std::string> in_pieces(std::string text) {
  std::vector<std::string> out;
  while (code_points(text) > bounds::text_length) {
    const std::size_t most = byte_of_code_point(text, bounds::text_length);
    const std::size_t space = text.rfind(' ', most);
    const std::size_t end = space == std::string::npos || space == 0 ? most : space;
    out.push_back(text.substr(0, end));
    text = trimmed(std::string_view(text).substr(end));
  }
  if (!text.empty()) out.push_back(std::move(text));
  return out;
}

std::string digits_of(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (c >= '0' && c <= '9') out += c;
  }
  return out;
}

std::string hash_of(std::string_view text) {
  return fmt::format("{:016x}", fnv(fnv_basis, text));
}

std::string weight_text(std::string text, std::string_view unit) {
  const bool has_unit = std::ranges::any_of(
      text, [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); });
  if (!has_unit) text += fmt::format(" {}", unit);
  const std::string lower = lower_ascii(text);
  const bool large = lower.find("kg") != std::string::npos || lower.find("lb") != std::string::npos;
  const std::size_t comma = text.find(',');
  if (comma == std::string::npos || text.find_first_of(",.", comma + 1) != std::string::npos) {
    return text;
  }
  std::size_t end = comma + 1;
  while (end < text.size() && text[end] >= '0' && text[end] <= '9') ++end;
  const std::size_t decimals = end - comma - 1;
  if (decimals != 0 && (decimals != 3 || large)) text[comma] = '.';
  return text;
}
}  // namespace furnish
