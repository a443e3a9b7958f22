#include "spec/syntax_fault.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <optional>
#include <string>

#include "base/date.h"
#include "base/quantity.h"
#include "base/text.h"
#include "spec/date_hint.h"
#include "spec/file_kinds.h"
#include "spec/pet_format.h"
#include "spec/said_product.h"
#include "spec/visit_format.h"

namespace furnish {
namespace {
bool digit(char c) {
  return c >= '0' && c <= '9';
}
bool letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
bool has_letter(std::string_view s) {
  return std::ranges::any_of(s, letter);
}
bool only(std::string_view s, std::string_view extra) {
  return !s.empty() && std::ranges::all_of(s, [&](char c) {
    return digit(c) || extra.find(c) != std::string_view::npos;
  });
}
std::string_view before_comment(std::string_view s) {
  return trimmed(s.substr(0, s.find(" #")));
}

/// `key = value` of one line, as far as it can be told apart.
struct Line {
  std::string_view all, key, value;
};
Line split(std::string_view all) {
  const std::size_t equals = all.find('=');
  if (equals == std::string_view::npos) return {all, before_comment(all), {}};
  return {all, trimmed(all.substr(0, equals)), before_comment(all.substr(equals + 1))};
}

struct Told {
  std::string message, hint;
  std::string_view part;  ///< of the line, to point at; empty: where the parser stopped
};

std::optional<Told> tell_key(const Line& line) {
  if (line.value.empty() && line.all.find('=') == std::string_view::npos) {
    const std::size_t colon = line.key.find(':');
    if (colon != std::string_view::npos) {
      return Told{"a key and its value stand either side of =, not of :",
                  fmt::format("write {} = {}", trimmed(line.key.substr(0, colon)),
                              trimmed(line.key.substr(colon + 1))),
                  line.key.substr(colon, 1)};
    }
    return Told{"a key without a value", "write key = value, or a # in front of a remark",
                line.key};
  }
  const bool bare = std::ranges::none_of(
      line.key, [](char c) { return c == '"' || c == '\'' || c == '[' || c == '.' || c == '{'; });
  if (bare && line.key.find(' ') != std::string_view::npos) {
    std::string hyphened(line.key);
    std::ranges::replace(hyphened, ' ', '-');
    return Told{"a key of several words stands in quotes",
                fmt::format("write \"{}\" or {}", line.key, hyphened), line.key};
  }
  return std::nullopt;
}

/// The unit that a quantity behind such a key mostly has; empty if it is a plain number, or no key.
std::string_view usual_unit(std::string_view name) {
  const KeyInfo* const key = find_key(name);
  if (key == nullptr) return {};
  switch (key->kind) {
    case Kind::length:
      return "mm";
    case Kind::mass:
      return "kg";
    case Kind::volume:
      return "ml";
    case Kind::duration:
      return "min";
    case Kind::days:
      return "weeks";
    default:
      return {};
  }
}

constexpr std::string_view how_dates_are_written =
    "a date is written year-month-day, with two digits for month and day";

/// A day in words, a month or a span where a date is wanted; a key that is not one of ours may be a
/// vaccination's name.
std::optional<Told> tell_day(std::string_view name, std::string_view value) {
  const KeyInfo* const key = find_key(name);
  const bool birth = key != nullptr && key->kind == Kind::birth;
  if (key != nullptr && key->kind != Kind::date && !birth) return std::nullopt;
  if (key != nullptr && parse_span(value)) {
    return Told{"a date, not a span, is wanted here", "write the day itself, such as 2026-11-24",
                value};
  }
  constexpr std::string_view month_alone = "2021-04";
  if (birth && value.size() == month_alone.size() && parse_date(std::string(value) + "-01")) {
    return Told{"a month alone stands in quotes", fmt::format("write \"{}\"", value), value};
  }
  const bool year = std::ranges::count_if(value, digit) >= 4;
  std::string hint = year ? date_hint(TomlNode{std::string(value), {}}) : std::string();
  if (hint.empty()) return std::nullopt;
  const std::size_t guess = hint.find(" or the day itself");
  if (key == nullptr && guess != std::string::npos) {
    hint = hint.substr(0, guess) + ", or the day on the card";
  }
  return Told{std::string(how_dates_are_written), std::move(hint), value};
}

/// An hour as people write it, where a time of day is wanted.
std::optional<Told> tell_time(std::string_view name, std::string_view value) {
  const KeyInfo* const key = find_key(name);
  if (key == nullptr || key->kind != Kind::time || parse_time_of_day(value)) return std::nullopt;
  std::string hint = time_hint(TomlNode{std::string(value), {}});
  if (hint.empty()) return std::nullopt;
  return Told{"a time of day is written as 09:30", std::move(hint), value};
}

std::optional<Told> tell_number(std::string_view key, std::string_view value) {
  if (value.empty() || (!digit(value[0]) && value[0] != '+' && value[0] != '(')) {
    return std::nullopt;
  }
  const std::string quoted = fmt::format("write \"{}\"", value);
  const std::size_t colon = value.find(':');
  const auto colons = std::ranges::count(value, ':');
  if (only(value, ":") && colons > 0) {
    if (key == "dilution") return Told{"a ratio is a string, in quotes", quoted, value};
    if ((colon == 1 || colon == 2) && (colons == 2 || value.size() == colon + 3)) {
      return Told{"there is no such time of day",
                  "hours go from 00 to 23, minutes and seconds from 00 to 59", value};
    }
    return Told{"a ratio is a string, in quotes", quoted, value};
  }
  const auto dots = std::ranges::count(value, '.');
  const auto dashes = std::ranges::count(value, '-');
  const auto slashes = std::ranges::count(value, '/');
  if (only(value, ".-/") && (dots == 2 || dashes == 2 || slashes == 2)) {
    if (std::string hint = date_hint_of_numbers(value); !hint.empty()) {
      return Told{std::string(how_dates_are_written), std::move(hint), value};
    }
  }
  if (auto told = tell_day(key, value)) return told;
  if (auto told = tell_time(key, value)) return told;
  if (only(value, ",")) {
    std::string pointed(value);
    std::ranges::replace(pointed, ',', '.');
    const std::string_view unit = usual_unit(key);
    return Told{"a decimal comma",
                unit.empty()
                    ? fmt::format("write {}, with a point", pointed)
                    : fmt::format("write \"{} {}\", with its unit and in quotes", pointed, unit),
                value};
  }
  if (only(value, " +-()/.")) return Told{"a number to call stands in quotes", quoted, value};
  if (has_letter(value) || value.find(' ') != std::string_view::npos || slashes > 0) {
    return Told{"a quantity with its unit is a string, in quotes", quoted, value};
  }
  return std::nullopt;
}

/// A path as another system writes it, or a backslash that is meant.
std::optional<Told> tell_backslash(const Line& line) {
  const std::size_t begin = line.value.find('"'), end = line.value.rfind('"');
  if (begin == std::string_view::npos || end == begin) return std::nullopt;
  const std::string_view quoted = line.value.substr(begin, end - begin + 1);
  if (quoted.find('\\') == std::string_view::npos) return std::nullopt;
  const std::size_t colon = quoted.find(':');
  if (colon == 2) {
    const std::size_t name = quoted.find_last_of("\\/") + 1;
    return Told{"folders of a path are divided by /, and it begins in the salon's folder",
                fmt::format("write \"photos/{}, and copy the picture there", quoted.substr(name)),
                quoted};
  }
  if (line.key != keys::identity::photo.name && line.key != keys::photo::file.name) {
    std::string doubled;
    for (const char c : quoted) doubled += c == '\\' ? "\\\\" : std::string(1, c);
    return Told{"a backslash in a string begins a sign of its own",
                fmt::format("write {}", doubled), quoted};
  }
  std::string slashes(quoted);
  std::ranges::replace(slashes, '\\', '/');
  return Told{"folders of a path are divided by /", fmt::format("write {}", slashes), quoted};
}

std::optional<Told> tell_word(std::string_view name, std::string_view value) {
  if (value.starts_with("“") || value.starts_with("”") || value.starts_with("„") ||
      value.starts_with("‘") || value.starts_with("’")) {
    return Told{"typographic quotes round a string", "write straight quotes: \" \"", value};
  }
  if (value.empty() || !letter(value[0])) return std::nullopt;
  const std::string word = lower_ascii(value);
  if (word == "true" || word == "yes" || word == "on") {
    return Told{"not a yes or no as TOML has it", "write true", value};
  }
  if (word == "false" || word == "no" || word == "off") {
    return Told{"not a yes or no as TOML has it", "write false", value};
  }
  if (auto told = tell_day(name, value)) return told;
  const KeyInfo* const key = find_key(name);
  if (key != nullptr && key->kind == Kind::product) {
    if (const std::string braces = product_in_braces(value); !braces.empty()) {
      return Told{"a product with its mix or its time is a table in braces",
                  fmt::format("write {}", braces), value};
    }
  }
  return Told{"words stand in quotes", fmt::format("write \"{}\"", value), value};
}

/// In braces and brackets, the value around the place where the parser stopped.
std::string_view value_around(std::string_view line, SourceSpan at) {
  const std::size_t stop = byte_of_code_point(line, at.begin.column - 1);
  std::size_t begin = stop > 0 ? line.find_last_of("=,[{", stop - 1) : std::string_view::npos;
  begin = begin == std::string_view::npos ? 0 : begin + 1;
  const std::size_t end = std::min(line.find_first_of(",]}#", begin), line.size());
  return trimmed(line.substr(begin, end - begin));
}

std::optional<Told> tell_value(const Line& line, SourceSpan at) {
  std::string_view value = line.value;
  // " #" begins a comment, so that `blade = #10` seems to have no value.
  if (value.empty()) {
    const std::size_t hash = line.all.find('#');
    if (hash == std::string_view::npos) return Told{"a key without a value", {}, line.key};
    const std::string_view after = trimmed(line.all.substr(hash + 1));
    return Told{"a # outside of quotes begins a comment",
                fmt::format("write \"{}\", in quotes", after), line.all.substr(hash)};
  }
  if (value[0] == '{' || value[0] == '[') value = value_around(line.all, at);
  if (auto told = tell_number(line.key, value)) return told;
  return tell_word(line.key, value);
}

std::optional<Told> tell_header(std::string_view line) {
  const std::string_view text = before_comment(line);
  const std::size_t brackets = text.starts_with("[[") ? 2 : 1;
  std::string_view name = trimmed(text.substr(std::min(brackets, text.size())));
  if (brackets == 2 && name.ends_with(']')) name = trimmed(name.substr(0, name.size() - 1));
  if (name.empty() || name.find_first_of("[]\"'") != std::string_view::npos) return std::nullopt;
  return Told{
      "a heading without its closing bracket",
      fmt::format("write {}{}{}", std::string(brackets, '['), name, std::string(brackets, ']')),
      text};
}

std::string in_our_words(std::string_view parser_says) {
  constexpr std::string_view opening = "Error while parsing ";
  std::string out(parser_says);
  const std::size_t colon = out.find(": ");
  if (out.starts_with(opening) && colon != std::string::npos) {
    out = fmt::format("not TOML ({}): {}", out.substr(opening.size(), colon - opening.size()),
                      out.substr(colon + 2));
  }
  std::string plain;
  for (const char c : out) {
    if (c == '\n') {
      plain += "\\n";
    } else {
      plain += c;
    }
  }
  return plain;
}

SourceSpan span_of(const SourceSpan& at, std::string_view line, std::string_view part) {
  const auto from = static_cast<std::size_t>(part.data() - line.data());
  const auto column = static_cast<std::uint32_t>(code_points(line.substr(0, from)) + 1);
  const auto end = static_cast<std::uint32_t>(column + std::max<std::size_t>(code_points(part), 1));
  return {at.file, {at.begin.line, column}, {at.begin.line, end}};
}

/// The part of a line that names what it defines: `[trim]`, or the key before =.
std::string_view defines(std::string_view line) {
  const std::string_view text = trimmed(line);
  if (text.starts_with('[')) return trimmed(text.substr(0, text.rfind(']') + 1));
  return trimmed(text.substr(0, text.find('=')));
}

/// Looks upwards for the line that defined the same; a key's search ends at its table's header.
void note_first(const SourceText& source, const SourceSpan& at, Diagnostic& fault) {
  const std::string_view again = defines(source.line(at.begin.line));
  const bool header = again.starts_with('[');
  for (std::uint32_t n = at.begin.line - 1; n > 0; --n) {
    const std::string_view line = source.line(n), first = defines(line);
    if (!first.empty() && first == again) {
      SourceSpan there{at.file, {n, 1}, {n, 1}};
      fault.notes.emplace_back(span_of(there, line, first), "first given here");
      return;
    }
    if (!header && first.starts_with('[')) return;
  }
}

void report_redefined(const SourceText& source, const SourceSpan& at, DiagnosticSink& sink) {
  const std::string_view line = source.line(at.begin.line), again = defines(line);
  if (again.empty()) {
    sink.error("syntax", at, "something is given twice");
    return;
  }
  const bool header = again.starts_with('[');
  Diagnostic& fault = sink.error(
      "given-twice", span_of(at, line, again),
      header ? fmt::format("{} is given twice", again) : fmt::format("'{}' is given twice", again));
  note_first(source, at, fault);
  fault.hint = header ? "put both parts under one heading" : "keep one of the two";
}
}  // namespace

std::vector<ShortTime> short_times(std::string_view line) {
  std::vector<ShortTime> out;
  char quote = 0;
  for (std::size_t i = 0; i < line.size(); ++i) {
    if (quote != 0) {
      if (line[i] == '\\' && quote == '"')
        ++i;
      else if (line[i] == quote)
        quote = 0;
    } else if (line[i] == '"' || line[i] == '\'') {
      quote = line[i];
    } else if (line[i] == '#') {
      break;
    } else if (line[i] == '=') {
      const std::string_view key = trimmed(line.substr(0, i));
      const std::string_view value = trimmed(line.substr(i + 1));
      const std::size_t bytes = std::min(value.find_first_of(" \t\r,}#"), value.size());
      const bool time = bytes <= 5 && parse_time_of_day(value.substr(0, bytes)).has_value();
      if (!time || key.ends_with("dilution")) continue;
      out.push_back({static_cast<std::size_t>(value.data() - line.data()), bytes});
    }
  }
  return out;
}

void report_syntax_fault(const SourceText& source, SourceSpan at, std::string_view parser_says,
                         DiagnosticSink& sink) {
  const auto says = [&](std::string_view words) {
    return parser_says.find(words) != std::string_view::npos;
  };
  const std::string_view text = source.line(at.begin.line);
  const Line line = split(text);
  if (says("cannot redefine") || says("cannot insert")) return report_redefined(source, at, sink);
  if (says("expected day between") || says("expected month between")) {
    sink.error("no-such-day", span_of(at, text, line.value.empty() ? line.all : line.value),
               "there is no such day in the calendar");
    return;
  }
  const bool header = trimmed(text).starts_with('[');
  const bool string =
      says("parsing string") || says("parsing literal string") || says("parsing multi-line");
  std::optional<Told> told;
  if ((string && says("escape sequence")) || says("unicode scalar")) {
    told = tell_backslash(line);
  } else if (string && says("control characters")) {
    told = Told{"a string that does not end",
                "close it in the same line, with the quote that opened it", line.value};
  } else if (says("inline table") && says("saw '\\n'")) {
    told = Told{"a table in braces does not go over the end of its line",
                "write it in one line, or under a [heading] of its own",
                {}};
  } else if (!header && !string && says("expected '='")) {
    told = tell_key(line);
  } else if (header && says("expected ']'")) {
    told = tell_header(text);
  } else if (!header && !string) {
    told = tell_value(line, at);
  }
  if (!told && says("expected a comment or whitespace")) {
    told = Told{
        "something follows the value", "one key and its value to a line; # begins a remark", {}};
  }
  if (!told) {
    at.end = {at.begin.line, at.begin.column + 1};
    sink.error("syntax", at, in_our_words(parser_says));
    return;
  }
  sink.error("syntax", told->part.empty() ? at : span_of(at, text, told->part), told->message)
      .hint = told->hint;
}
}  // namespace furnish
