#pragma once

#include <chrono>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "app/options.h"
#include "base/date.h"

namespace furnish {

// What the words of the command line mean. A check gives what is wrong with a word, and behind a
// line end what to do about it where one can say; nothing if it is good.

/// "pdf", "png", "svg" and "text", by their formats.
std::span<const std::pair<std::string_view, Format>> formats();
std::span<const std::pair<std::string_view, Units>> unit_words();
/// "ua-1" and "ua-2".
std::span<const std::pair<std::string_view, PdfStandard>> standards();
/// The first parts of such a table: "pdf", "png" …
template <typename Table>
std::vector<std::string_view> first_words(const Table& table) {
  std::vector<std::string_view> out;
  for (const auto& row : table) out.push_back(row.first);
  return out;
}
/// The value that a table has for a word. pre: it has one.
template <typename Value>
Value value_of(std::span<const std::pair<std::string_view, Value>> table, std::string_view word) {
  for (const auto& [name, value] : table) {
    if (name == word) return value;
  }
  return table.front().second;
}
std::vector<std::string_view> file_kind_names();

/// "2w", "30d", or as files write it.
std::optional<CalendarSpan> parse_within(const std::string&);
/// What the ending of a file's name asks for; a PDF where it asks for nothing.
Format format_of(std::string_view output);
/// The ending of an output's name that no format has; empty if there is none to look at.
std::string unknown_ending(const std::string& output);

std::string wrong_day(const std::string&);
std::string wrong_visit(const std::string&);
std::string wrong_span(const std::string&);
std::string wrong_language(const std::string&);
std::string wrong_paper(const std::string&);
std::string wrong_number(const std::string&, int least, int most);
/// For a word that has to be one of some: those, and the nearest.
std::string wrong_word(const std::string&, std::span<const std::string_view> words);
/// "did you mean card?", or nothing.
std::string meant(std::string_view word, std::span<const std::string_view> words);
}  // namespace furnish
