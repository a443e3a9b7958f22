#include "spec/language.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "base/text.h"
#include "spec/client_words.h"
#include "spec/fields.h"
#include "spec/offer.h"

namespace furnish {
namespace {
bool letters(std::string_view s) {
  return std::ranges::all_of(s, [](char c) { return c >= 'a' && c <= 'z'; });
}
bool digits(std::string_view s) {
  return std::ranges::all_of(s, [](char c) { return c >= '0' && c <= '9'; });
}
bool letters_or_digits(std::string_view s) {
  return std::ranges::all_of(
      s, [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'); });
}
bool variant(std::string_view s) {
  return (s.size() >= 5 && s.size() <= 8) || (s.size() == 4 && digits(s.substr(0, 1)));
}

std::vector<std::string_view> split(std::string_view tag) {
  std::vector<std::string_view> parts;
  for (std::size_t begin = 0; begin <= tag.size();) {
    const std::size_t end = std::min(tag.find('-', begin), tag.size());
    parts.push_back(tag.substr(begin, end - begin));
    begin = end + 1;
  }
  return parts;
}
}  // namespace

bool well_formed_language(std::string_view tag) {
  const std::string lower = lower_ascii(tag);
  const std::vector<std::string_view> parts = split(lower);
  for (const std::string_view part : parts) {
    if (part.empty() || part.size() > 8 || !letters_or_digits(part)) return false;
  }
  std::size_t i = 0;
  const auto is = [&](std::size_t size, auto test) {
    return i < parts.size() && parts[i].size() == size && test(parts[i]);
  };
  // A run of subtags of `least` to 8 signs, at least one of them.
  const auto run = [&](std::size_t least) {
    const std::size_t first = i;
    while (i < parts.size() && parts[i].size() >= least) ++i;
    return i > first;
  };
  if (parts[0] != "x") {
    if ((parts[0].size() != 2 && parts[0].size() != 3) || !letters(parts[0])) return false;
    ++i;
    for (int extended = 0; extended < 3 && is(3, letters); ++extended) ++i;
    if (is(4, letters)) ++i;
    if (is(2, letters) || is(3, digits)) ++i;
    while (i < parts.size() && variant(parts[i])) ++i;
    while (is(1, letters_or_digits) && parts[i] != "x") {
      ++i;
      if (!run(2)) return false;
    }
  }
  if (i < parts.size() && parts[i] == "x") {
    ++i;
    if (!run(1)) return false;
  }
  return i == parts.size();
}

std::string_view language_part(std::string_view tag) {
  // What is private stands behind "-x-", and may look like anything.
  const std::string lower = lower_ascii(tag);
  const std::size_t more = lower.find("-u-");
  return more < lower.find("-x-") && !lower.starts_with("x-") ? tag.substr(0, more) : tag;
}

bool plain_language(std::string_view tag) {
  return well_formed_language(tag) && language_part(tag) == tag;
}

std::string read_language(Fields& fields, const LanguageKey& key) {
  const auto tag = fields.text(key);
  if (!tag) return {};
  if (plain_language(tag->value)) return tag->value;
  if (well_formed_language(tag->value)) {
    offer_words(fields.sink().error(
                    "bad-language", tag->span,
                    fmt::format("'{}' says more than a language: sheets have the digits of the "
                                "files and the usual calendar in each",
                                tag->value)),
                std::string(language_part(tag->value)));
    return {};
  }
  Diagnostic& fault = fields.sink().error("bad-language", tag->span,
                                          fmt::format("'{}' is not a language tag", tag->value));
  std::string hyphened = tag->value;
  std::ranges::replace(hyphened, '_', '-');
  const std::string_view named = language_named(tag->value);
  if (well_formed_language(hyphened)) {
    offer_words(fault, hyphened);
  } else if (!named.empty()) {
    offer_words(fault, std::string(named));
  } else {
    fault.hint = "write a code as of BCP 47, such as \"en\", \"en-GB\" or \"es\"";
  }
  return {};
}
}  // namespace furnish
