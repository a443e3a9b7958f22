#include "spec/values.h"

#include <fmt/format.h>

#include <cmath>

#include "base/quantity.h"
#include "base/text.h"
#include "spec/date_hint.h"
#include "spec/offer.h"
#include "spec/toml_text.h"

namespace furnish {
namespace {
constexpr std::size_t shown_code_points = 40;

std::string shortened(std::string_view text) {
  std::string out;
  if (code_points(text) > shown_code_points) {
    out = std::string(text.substr(0, byte_of_code_point(text, shown_code_points))) + "…";
  } else {
    out = text;
  }
  for (char& c : out) {
    if (static_cast<unsigned char>(c) < 0x20 || c == 0x7F) c = ' ';
  }
  return out;
}

std::string number_text(double number) {
  if (std::isnan(number)) return "nan";
  if (std::isinf(number)) return number < 0 ? "-inf" : "inf";
  return fmt::format("{}", number);
}

struct Found {
  std::string operator()(const std::string& s) const {
    return fmt::format("the string \"{}\"", shortened(s));
  }
  std::string operator()(std::int64_t n) const { return fmt::format("the number {}", n); }
  std::string operator()(double n) const {
    return std::isfinite(n) ? "the number " + number_text(n) : number_text(n);
  }
  std::string operator()(bool b) const { return b ? "true" : "false"; }
  std::string operator()(const TomlDate& d) const { return "the date " + d.written; }
  std::string operator()(const TomlTime&) const { return "a time of day"; }
  std::string operator()(const TomlDateTime&) const { return "a date with a time"; }
  std::string operator()(const TomlList&) const { return "a list"; }
  std::string operator()(const TomlTable&) const { return "a table"; }
};

/// Two other letters make another thing of a word ("warts", "ears"), so its first letter must be
/// right then, unless the word is long.
std::optional<std::string_view> nearest_word(const std::string& word,
                                             std::span<const std::string_view> words) {
  constexpr std::size_t letters_per_slip = 4;
  if (word.size() >= 2 * letters_per_slip) return nearest(word, words);
  if (const auto near = nearest(word, words, 1)) return near;
  std::vector<std::string_view> alike;
  for (const std::string_view other : words) {
    if (!word.empty() && other.starts_with(word[0])) alike.push_back(other);
  }
  return nearest(word, alike);
}

std::optional<double> number_in(const TomlNode& node) {
  if (const auto* const whole = std::get_if<std::int64_t>(&node.value)) {
    return static_cast<double>(*whole);
  }
  if (const auto* const real = std::get_if<double>(&node.value)) return *real;
  return std::nullopt;
}

/// What to write for "13,5" and "13.5" in quotes, where a plain number is wanted; or nothing.
std::string plain_number(const TomlNode& node) {
  const auto* const text = std::get_if<std::string>(&node.value);
  if (text == nullptr || text->empty()) return {};
  std::string pointed(trimmed(*text));
  for (char& c : pointed) {
    if (c == ',') c = '.';
    if (c != '.' && (c < '0' || c > '9')) return {};
  }
  return pointed;
}

/// What to write where words are wanted: "5550101" for a number, "a, b" for a list of words.
void offer_quoted(Diagnostic& fault, const TomlNode& node) {
  if (const auto* const whole = std::get_if<std::int64_t>(&node.value)) {
    return offer_words(fault, fmt::format("{}", *whole));
  }
  if (const auto number = number_in(node); number && std::isfinite(*number)) {
    return offer_words(fault, number_text(*number));
  }
  if (const auto* const date = std::get_if<TomlDate>(&node.value)) {
    return offer_words(fault, date->written);
  }
  const auto* const list = std::get_if<TomlList>(&node.value);
  if (list == nullptr || list->empty()) return;
  std::vector<std::string> shown, meant;
  for (const TomlNode& item : *list) {
    const auto* const word = std::get_if<std::string>(&item.value);
    if (word == nullptr) return;
    shown.push_back(shortened(*word));
    meant.push_back(*word);
  }
  offer_words(fault, joined(shown, ", "), joined(meant, ", "));
}

/// More are no help.
constexpr std::size_t most_listed = 16, few = 3;

/// Words that share the first letters, or the first ones.
std::string some_of(std::string_view word, std::span<const std::string_view> words) {
  std::vector<std::string_view> out;
  const std::string start = lower_ascii(word.substr(0, 3));
  for (const std::string_view one : words) {
    if (out.size() < few && start.size() == 3 && one.find(start) != std::string_view::npos) {
      out.push_back(one);
    }
  }
  for (const std::string_view one : words) {
    if (out.size() < few && std::ranges::find(out, one) == out.end()) out.push_back(one);
  }
  return quoted_list(out);
}

template <typename T>
bool in_range(const T& value, const Range<T>& range, SourceSpan at, std::string_view what,
              std::string_view written, DiagnosticSink& sink) {
  if (range.holds(value)) return true;
  sink.error("out-of-bounds", at,
             fmt::format("{} must be {}, found {}", what, to_text(range), shortened(written)));
  return false;
}

/// The words of a quantity; empty after a fault.
std::optional<std::string> quantity_text(const TomlNode& node, std::string_view what,
                                         DiagnosticSink& sink) {
  auto text = as_text(node, what, sink);
  if (!text || code_points(*text) <= bounds::quantity_length) return text;
  sink.error("too-long", node.span, fmt::format("{} is too long for a quantity", what));
  return std::nullopt;
}

/// What to write for "13,5 mm" and "4.6 KG".
template <typename T>
std::string without_slip(std::string text, Parsed<T> (*parse)(std::string_view)) {
  text = lower_ascii(text);
  if (const std::size_t comma = text.find(','); comma != std::string::npos) text[comma] = '.';
  return parse(text) ? text : std::string();
}

template <typename T>
std::optional<T> quantity(const TomlNode& given, std::string_view what, const Range<T>& range,
                          Parsed<T> (*parse)(std::string_view), std::string_view expected,
                          std::string_view unit, DiagnosticSink& sink) {
  const TomlNode& node = only_one(given);
  if (!std::holds_alternative<std::string>(node.value)) {
    Diagnostic& fault = report_type(node, what, expected, sink);
    if (const auto number = number_in(node); number && std::isfinite(*number)) {
      offer(fault, fmt::format("\"{} {}\"", number_text(*number), unit),
            ", with its unit and in quotes");
    }
    return std::nullopt;
  }
  const auto text = quantity_text(node, what, sink);
  if (!text) return std::nullopt;
  const Parsed<T> parsed = parse(*text);
  if (!parsed) {
    offer_words(sink.error("bad-quantity", node.span, fmt::format("{}: {}", what, parsed.fault)),
                without_slip(*text, parse));
    return std::nullopt;
  }
  if (!in_range(*parsed.value, range, node.span, what, fmt::format("\"{}\"", *text), sink)) {
    return std::nullopt;
  }
  return parsed.value;
}
}  // namespace

const TomlNode& only_one(const TomlNode& node) {
  const auto* const list = std::get_if<TomlList>(&node.value);
  return list != nullptr && list->size() == 1 ? list->front() : node;
}

std::string found_text(const TomlNode& node) {
  return std::visit(Found{}, node.value);
}

std::string quoted_list(std::span<const std::string_view> words) {
  std::vector<std::string> quoted;
  for (const std::string_view word : words) quoted.push_back(fmt::format("'{}'", word));
  return listed(quoted, " or ");
}

Diagnostic& report_type(const TomlNode& node, std::string_view what, std::string_view expected,
                        DiagnosticSink& sink) {
  return sink.error("wrong-type", node.span,
                    fmt::format("{}: expected {}, found {}", what, expected, found_text(node)));
}

Diagnostic& report_unknown(std::string_view code, SourceSpan at, std::string_view noun,
                           std::string_view word, std::span<const std::string_view> words,
                           DiagnosticSink& sink) {
  Diagnostic& fault = sink.error(code, at, fmt::format("no {} '{}'", noun, shortened(word)));
  if (const auto near = nearest_word(lower_ascii(word), words)) {
    offer_meant(fault, *near);
  } else if (words.size() > most_listed) {
    fault.hint = fmt::format("write one such as {}", some_of(word, words));
  } else if (!words.empty()) {
    offer_choice(fault, words);
  }
  return fault;
}

std::optional<std::string> as_text(const TomlNode& given, std::string_view what,
                                   DiagnosticSink& sink) {
  const TomlNode& node = only_one(given);
  const auto* const text = std::get_if<std::string>(&node.value);
  if (text == nullptr) {
    Diagnostic& fault = report_type(node, what, "words in quotes", sink);
    offer_quoted(fault, node);
    return std::nullopt;
  }
  for (const char c : *text) {
    if (static_cast<unsigned char>(c) >= 0x20 && c != 0x7F) continue;
    Diagnostic& fault = sink.error("control-character", node.span,
                                   fmt::format("{}: control character U+{:04X} in the string", what,
                                               static_cast<unsigned char>(c)));
    fault.hint =
        c == '\n' ? "write it in one line; sheets break lines by themselves" : "take it out";
    return std::nullopt;
  }
  const std::string_view bare = trimmed(*text);
  if (blank(bare)) {
    sink.error("blank", node.span, fmt::format("{} is blank", what)).hint =
        "leave the key out where there is nothing to say";
    return std::nullopt;
  }
  if (const std::size_t n = code_points(bare); n > bounds::text_length) {
    sink.error("too-long", node.span,
               fmt::format("{} has {} characters; at most {} fit", what, n, bounds::text_length));
    return std::nullopt;
  }
  return std::string(bare);
}

std::optional<bool> as_flag(const TomlNode& node, std::string_view what, DiagnosticSink& sink) {
  if (const auto* const flag = std::get_if<bool>(&node.value)) return *flag;
  if (const auto* const text = std::get_if<std::string>(&node.value)) {
    const std::string word = lower_ascii(trimmed(*text));
    if (word == "true" || word == "yes") return true;
    if (word == "false" || word == "no") return false;
  }
  report_type(node, what, "true or false", sink);
  return std::nullopt;
}

std::optional<Date> as_date(const TomlNode& node, std::string_view what, DiagnosticSink& sink) {
  std::optional<TomlDate> given;
  if (const auto* const date = std::get_if<TomlDate>(&node.value)) given = *date;
  if (const auto* const text = std::get_if<std::string>(&node.value)) {
    const std::string_view written = trimmed(*text);
    if (const auto date = parse_date(written)) given = TomlDate{date, std::string(written)};
  }
  if (!given) {
    Diagnostic& fault = report_type(node, what, "a date such as 2021-04-09", sink);
    if (const auto* const both = std::get_if<TomlDateTime>(&node.value)) {
      offer(fault, both->date);
    } else {
      fault.hint = date_hint(node);
    }
    return std::nullopt;
  }
  if (!given->date || !bounds::day.holds(*given->date)) {
    sink.error("out-of-bounds", node.span,
               fmt::format("{} must be {}, found {}", what, to_text(bounds::day), given->written));
    return std::nullopt;
  }
  return given->date;
}

std::optional<TimeOfDay> as_time(const TomlNode& node, std::string_view what,
                                 DiagnosticSink& sink) {
  const auto* const text = std::get_if<std::string>(&node.value);
  if (const auto said = text == nullptr ? std::nullopt : parse_time_of_day(*text)) return said;
  const auto* const time = std::get_if<TomlTime>(&node.value);
  if (time == nullptr) {
    report_type(node, what, "a time of day such as 09:30", sink).hint = time_hint(node);
    return std::nullopt;
  }
  if (!time->whole) {
    offer(sink.error("out-of-bounds", node.span, fmt::format("{} must be a whole minute", what)),
          fmt::format("{:02}:{:02}:00", time->time.count() / 60, time->time.count() % 60));
    return std::nullopt;
  }
  return time->time;
}

std::optional<double> as_number(const TomlNode& node, std::string_view what,
                                const Range<double>& range, DiagnosticSink& sink) {
  const auto number = number_in(node);
  if (!number || !std::isfinite(*number)) {
    offer(report_type(node, what, "a number", sink), plain_number(node), ", without quotes");
    return std::nullopt;
  }
  if (!in_range(*number, range, node.span, what, number_text(*number), sink)) return std::nullopt;
  return number;
}

std::optional<int> as_whole(const TomlNode& node, std::string_view what, const Range<double>& range,
                            DiagnosticSink& sink) {
  if (!std::holds_alternative<std::int64_t>(node.value)) {
    offer(report_type(node, what, "a whole number", sink), plain_number(node), ", without quotes");
    return std::nullopt;
  }
  const auto number = as_number(node, what, range, sink);
  if (!number) return std::nullopt;
  return static_cast<int>(*number);
}

std::optional<Length> as_quantity(const TomlNode& node, std::string_view what,
                                  const Range<Length>& range, DiagnosticSink& sink) {
  return quantity(node, what, range, parse_length, "a length such as \"13 mm\" or \"1/2 in\"", "mm",
                  sink);
}
std::optional<Mass> as_quantity(const TomlNode& node, std::string_view what,
                                const Range<Mass>& range, DiagnosticSink& sink) {
  return quantity(node, what, range, parse_mass, "a weight such as \"4.6 kg\" or \"10 lb 3 oz\"",
                  "kg", sink);
}
std::optional<Volume> as_quantity(const TomlNode& node, std::string_view what,
                                  const Range<Volume>& range, DiagnosticSink& sink) {
  return quantity(node, what, range, parse_volume, "a volume such as \"500 ml\" or \"16 fl oz\"",
                  "ml", sink);
}
std::optional<std::chrono::seconds> as_quantity(const TomlNode& node, std::string_view what,
                                                const Range<std::chrono::seconds>& range,
                                                DiagnosticSink& sink) {
  return quantity(node, what, range, parse_duration, "a time such as \"4 min\"", "min", sink);
}
std::optional<std::chrono::days> as_quantity(const TomlNode& node, std::string_view what,
                                             const Range<std::chrono::days>& range,
                                             DiagnosticSink& sink) {
  const auto span = as_quantity(
      node, what, Range<CalendarSpan>{range.low, range.high, range.at_low, range.at_high}, sink);
  return span ? std::optional(span->about()) : std::nullopt;
}
std::optional<CalendarSpan> as_quantity(const TomlNode& node, std::string_view what,
                                        const Range<CalendarSpan>& range, DiagnosticSink& sink) {
  return quantity(node, what, range, parse_span, "a span such as \"8 weeks\" or \"10 days\"",
                  "weeks", sink);
}

std::optional<Dilution> as_dilution(const TomlNode& given, std::string_view what,
                                    DiagnosticSink& sink) {
  const TomlNode& node = only_one(given);
  if (!std::holds_alternative<std::string>(node.value)) {
    report_type(node, what, "a dilution such as \"10:1\" or \"1 in 10\"", sink);
    return std::nullopt;
  }
  const auto text = quantity_text(node, what, sink);
  if (!text) return std::nullopt;
  const Parsed<Dilution> parsed = parse_dilution(*text);
  if (!parsed) {
    sink.error("bad-quantity", node.span, fmt::format("{}: {}", what, parsed.fault));
    return std::nullopt;
  }
  if (parsed.value->total > bounds::weakest_dilution) {
    sink.error("out-of-bounds", node.span,
               fmt::format("{} must be at most 1 part in {:g}, found \"{}\"", what,
                           bounds::weakest_dilution, *text));
    return std::nullopt;
  }
  return parsed.value;
}

const TomlList* as_list(const TomlNode& node, std::string_view what, DiagnosticSink& sink) {
  const auto* const list = std::get_if<TomlList>(&node.value);
  if (list == nullptr) {
    Diagnostic& fault = report_type(node, what, "a list in [ ]", sink);
    if (const auto* const text = std::get_if<std::string>(&node.value)) {
      fault.hint = fmt::format("write [\"{}\"]", shortened(*text));
      fault.instead = {fmt::format("[{}]", toml_text::quoted(*text))};
    }
    return nullptr;
  }
  if (list->size() > bounds::list_length) {
    sink.error("too-long", node.span,
               fmt::format("{} has {} entries; at most {} are read", what, list->size(),
                           bounds::list_length));
    return nullptr;
  }
  return list;
}
}  // namespace furnish
