#include "app/command_values.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <charconv>
#include <filesystem>

#include "app/visit_name.h"
#include "base/paper.h"
#include "base/quantity.h"
#include "base/text.h"
#include "spec/bounds.h"
#include "spec/file_kinds.h"
#include "spec/language.h"

namespace furnish {
namespace {
constexpr std::array<std::pair<std::string_view, Format>, 4> format_table{
    {{"pdf", Format::pdf}, {"png", Format::png}, {"svg", Format::svg}, {"text", Format::text}}};
constexpr std::array<std::pair<std::string_view, Units>, 2> unit_table{
    {{"metric", Units::metric}, {"us", Units::us}}};
constexpr std::array<std::pair<std::string_view, PdfStandard>, 2> standard_table{
    {{"ua-1", PdfStandard::ua1}, {"ua-2", PdfStandard::ua2}}};
constexpr std::array<std::pair<std::string_view, Format>, 4> endings{
    {{".pdf", Format::pdf}, {".png", Format::png}, {".svg", Format::svg}, {".txt", Format::text}}};

std::string found(std::string_view expected, std::string_view text) {
  return fmt::format("expected {}, found \"{}\"", expected, text);
}

/// "2026-11-31": written as a day is.
bool like_a_day(std::string_view text) {
  constexpr std::string_view shape = "0000-00-00";
  return std::ranges::equal(
      text, shape, [](char c, char as) { return as == '0' ? c >= '0' && c <= '9' : c == as; });
}
}  // namespace

std::span<const std::pair<std::string_view, Format>> formats() {
  return format_table;
}

std::span<const std::pair<std::string_view, Units>> unit_words() {
  return unit_table;
}

std::span<const std::pair<std::string_view, PdfStandard>> standards() {
  return standard_table;
}

std::vector<std::string_view> file_kind_names() {
  std::vector<std::string_view> out;
  for (const FileKind& kind : file_kinds()) out.push_back(kind.name);
  return out;
}

std::optional<CalendarSpan> parse_within(const std::string& text) {
  std::string written = text;
  if (!written.empty() && written.back() == 'w') written += "k";
  if (!written.empty() && written.back() == 'd') written += "ay";
  return parse_span(written).value;
}

Format format_of(std::string_view output) {
  const std::string name = lower_ascii(output);
  for (const auto& [ending, format] : endings) {
    if (name.ends_with(ending)) return format;
  }
  return Format::pdf;
}

std::string unknown_ending(const std::string& output) {
  const std::filesystem::path name(output);
  const std::string ending = name.extension().string();
  std::error_code ignored;
  // A person's file has a refusal of its own, wherever sheets are written.
  if (ending.empty() || ending == "." || lower_ascii(ending) == ".toml") return {};
  if (std::filesystem::is_directory(name, ignored)) return {};
  const auto known = first_words(endings);
  return std::ranges::find(known, lower_ascii(ending)) == known.end() ? ending : "";
}

std::string wrong_day(const std::string& text) {
  const auto day = parse_date(text);
  if (!day && like_a_day(text)) return fmt::format("no calendar has a day {}", text);
  if (!day) return found("a day such as 2026-11-24", text);
  if (bounds::day.holds(*day)) return "";
  return found(
      fmt::format("a day from {} to {}", to_iso(bounds::day.low), to_iso(bounds::day.high)), text);
}

std::string wrong_visit(const std::string& text) {
  if (parse_visit(text).first) return "";
  return found("a visit such as 2026-11-24, or 2026-11-24-2 for the second of a day", text);
}

std::string wrong_span(const std::string& text) {
  return parse_within(text) ? "" : found("a span such as 2w, 30d or \"3 months\"", text);
}

std::string wrong_language(const std::string& tag) {
  return plain_language(tag) ? "" : found("a language tag such as es or pt-BR", tag);
}

std::string wrong_paper(const std::string& text) {
  if (parse_paper(text)) return "";
  const auto names = paper_names();
  std::string out = fmt::format("there is no paper '{}'; one of {}", text, fmt::join(names, ", "));
  if (const std::string near = meant(text, names); !near.empty()) out += "\n" + near;
  return out;
}

std::string wrong_number(const std::string& text, int least, int most) {
  int number = 0;
  const char* const end = text.data() + text.size();
  const auto [stopped, error] = std::from_chars(text.data(), end, number);
  const bool good = error == std::errc() && stopped == end && number >= least && number <= most;
  return good ? "" : found(fmt::format("a whole number from {} to {}", least, most), text);
}

std::string wrong_word(const std::string& text, std::span<const std::string_view> words) {
  if (std::ranges::find(words, text) != words.end()) return "";
  std::string out = found(fmt::format("one of {}", fmt::join(words, ", ")), text);
  if (const std::string near = meant(text, words); !near.empty()) out += "\n" + near;
  return out;
}

std::string meant(std::string_view word, std::span<const std::string_view> words) {
  const auto near = nearest(word, words);
  return near ? fmt::format("did you mean {}?", *near) : "";
}
}  // namespace furnish
