#include "spec/document.h"

#include <fmt/format.h>

#include <toml++/toml.h>
#include <algorithm>
#include <sstream>

#include "base/text.h"
#include "spec/plain_document.h"
#include "spec/scan.h"
#include "spec/syntax_fault.h"

namespace furnish {
namespace {
/// Tables that dotted keys and headers nest are told here; brackets were counted by scan_text().
constexpr std::size_t deepest_tree = 64;
/// After so many faults of syntax a file is something else than what we read.
constexpr std::size_t most_syntax_faults = 20;

/// Where the text that is parsed has more than the person's: so many columns behind that place.
struct Stretch {
  Position at;
  std::uint32_t by;
};

/// A place of the text that is parsed in the person's.
Position written_at(Position place, const std::vector<Stretch>& stretches) {
  for (const Stretch& one : stretches) {
    if (one.at.line != place.line || place.column <= one.at.column) continue;
    place.column -= std::min(one.by, place.column - one.at.column);
  }
  return place;
}

SourceSpan to_span(const toml::source_region& region, std::uint32_t file,
                   const std::vector<Stretch>& stretches) {
  return {file, written_at({region.begin.line, region.begin.column}, stretches),
          written_at({region.end.line, region.end.column}, stretches)};
}

template <typename T>
std::string written(const T& time) {
  std::ostringstream out;
  out << time;
  return out.str();
}

class Converter {
 public:
  Converter(std::uint32_t file, const std::vector<Stretch>& stretches, DiagnosticSink& sink)
      : file_(file), stretches_(stretches), sink_(sink) {}

  TomlTable table(const toml::table& from, std::size_t depth) {
    TomlTable out;
    for (const auto& [key, node] : from) {
      const SourceSpan at = to_span(key.source(), file_, stretches_);
      if (std::ranges::any_of(key.str(), [](char c) {
            return static_cast<unsigned char>(c) < 0x20 || c == 0x7F;
          })) {
        sink_
            .error("control-character", at,
                   fmt::format("control character in the key '{}'", key.str()))
            .hint = "take it out";
      }
      out.push_back({std::string(key.str()), at, this->node(node, at, depth)});
    }
    // toml++ sorts by the alphabet.
    std::ranges::stable_sort(out, {}, [](const TomlEntry& e) { return e.key_span.begin; });
    return out;
  }

  bool too_deep() const { return too_deep_; }

 private:
  TomlNode node(const toml::node& from, SourceSpan near, std::size_t depth) {
    const SourceSpan span = to_span(from.source(), file_, stretches_);
    TomlNode out{TomlDateTime{}, span.begin.line == 0 ? near : span};
    if (depth > deepest_tree) {
      if (!too_deep_) {
        sink_.error("too-deep", near, fmt::format("tables nested more than {} deep", deepest_tree));
      }
      too_deep_ = true;
      return out;
    }
    if (const auto* const inner = from.as_table()) {
      out.value = table(*inner, depth + 1);
    } else if (const auto* const list = from.as_array()) {
      TomlList items;
      for (const toml::node& item : *list) items.push_back(node(item, out.span, depth + 1));
      out.value = std::move(items);
    } else if (const auto* const text = from.as_string()) {
      out.value = text->get();
    } else if (const auto* const whole = from.as_integer()) {
      out.value = whole->get();
    } else if (const auto* const real = from.as_floating_point()) {
      out.value = real->get();
    } else if (const auto* const truth = from.as_boolean()) {
      out.value = truth->get();
    } else if (const auto* const date = from.as_date()) {
      const toml::date d = date->get();
      out.value = TomlDate{make_date(d.year, d.month, d.day),
                           fmt::format("{:04}-{:02}-{:02}", d.year, d.month, d.day)};
    } else if (const auto* const both = from.as_date_time()) {
      const toml::date d = both->get().date;
      out.value = TomlDateTime{fmt::format("{:04}-{:02}-{:02}", d.year, d.month, d.day),
                               written(both->get())};
    } else if (const auto* const clock = from.as_time()) {
      const toml::time t = clock->get();
      out.value = TomlTime{TimeOfDay(t.hour * 60 + t.minute), t.second == 0 && t.nanosecond == 0,
                           written(t)};
    }
    return out;
  }

  std::uint32_t file_;
  const std::vector<Stretch>& stretches_;
  DiagnosticSink& sink_;
  bool too_deep_ = false;
};

/// Where a line of `text` begins; its size if there are fewer.
std::size_t begin_of_line(std::string_view text, std::uint32_t line) {
  std::size_t begin = 0;
  for (std::uint32_t n = 1; n < line; ++n) {
    begin = text.find('\n', begin);
    if (begin == std::string::npos) return text.size();
    ++begin;
  }
  return begin;
}

/// Gives the times of one line that lack them their seconds, as TOML 1.0 wants: `10:30`. False if
/// there are none.
bool lengthen_times(std::string& text, std::uint32_t line, std::vector<Stretch>& stretches) {
  const std::size_t begin = begin_of_line(text, line);
  const std::size_t end = std::min(text.find('\n', begin), text.size());
  const std::string before = text.substr(begin, end - begin);
  const std::vector<ShortTime> times = short_times(before);
  for (auto one = times.rbegin(); one != times.rend(); ++one) {
    const std::string full =
        (one->bytes == 4 ? "0" : "") + text.substr(begin + one->at, one->bytes) + ":00";
    text.replace(begin + one->at, one->bytes, full);
  }
  for (const ShortTime& one : times) {
    const auto column = static_cast<std::uint32_t>(
        code_points(std::string_view(before).substr(0, one.at + one.bytes)) + 1);
    stretches.push_back({{line, column}, static_cast<std::uint32_t>(8 - one.bytes)});
  }
  return !times.empty();
}

/// One line of `text` as spaces, so that all other places stay as they are.
void blank_line(std::string& text, std::uint32_t line) {
  for (std::size_t i = begin_of_line(text, line);
       i < text.size() && text[i] != '\n' && text[i] != '\r'; ++i) {
    text[i] = ' ';
  }
}

bool is_heading(const SourceText& source, std::uint32_t line) {
  return trimmed(source.line(line)).starts_with('[');
}

/// True if what follows `line` can be understood without it.
bool stands_alone(const SourceText& source, const LineStarts& starts, std::uint32_t line) {
  return !is_heading(source, line) && starts.clean(line) && starts.clean(line + 1);
}

/// The line behind the section that a heading begins, which is a heading again or the file's end;
/// 0 if nobody can tell where it ends. A heading's own bracket may be open, and is not counted.
std::uint32_t end_of_section(const SourceText& source, std::uint32_t file, std::uint32_t line) {
  const std::string_view text = source.text();
  const std::size_t begin = begin_of_line(text, line + 1);
  DiagnosticSink unheard;
  SourceText rest("", std::string(text.substr(begin)));
  const auto starts = scan_text(rest, file, unheard);
  if (!starts) return 0;
  const auto lines = static_cast<std::uint32_t>(std::ranges::count(rest.text(), '\n') + 1);
  for (std::uint32_t n = 1; n <= lines; ++n) {
    if (!starts->clean(n)) continue;
    if (is_heading(rest, n)) return line + n;
  }
  return starts->clean(lines) ? line + lines + 1 : 0;
}

/// What stands behind the equals sign of a line, without the blanks around it.
std::string_view value_in(std::string_view line) {
  const std::size_t equals = line.find('=');
  return equals == std::string_view::npos ? std::string_view() : trimmed(line.substr(equals + 1));
}

/// Of a list without its closing bracket the parser tells at the key that follows it. The line that
/// opened it; 0 if it is no such fault.
std::uint32_t unclosed_list(const SourceText& source, const SourceSpan& at,
                            std::string_view parser_says) {
  if (parser_says.find("parsing array") == std::string_view::npos) return 0;
  const std::string_view text = source.line(at.begin.line);
  const std::size_t before = byte_of_code_point(text, at.begin.column - 1);
  if (!blank(text.substr(0, before)) || value_in(text).empty()) return 0;
  for (std::uint32_t n = at.begin.line - 1; n > 0 && !is_heading(source, n); --n) {
    const std::string_view value = value_in(source.line(n));
    if (value.starts_with('[')) return n;
    if (!value.empty()) return 0;
  }
  return 0;
}

void report_unclosed_list(const SourceText& source, std::uint32_t file, std::uint32_t line,
                          bool alone, DiagnosticSink& sink) {
  const std::string_view text = source.line(line), value = value_in(text);
  const auto begin = static_cast<std::size_t>(value.data() - text.data());
  const auto column = static_cast<std::uint32_t>(code_points(text.substr(0, begin)) + 1);
  const auto end = static_cast<std::uint32_t>(column + code_points(value));
  const bool remark = value.find('#') != std::string_view::npos;
  sink.error("syntax", {file, {line, column}, {line, end}}, "a list without its closing bracket")
      .hint = alone && !remark ? fmt::format("write {}]", trimmed(text))
                               : std::string("close it with ] behind its last entry");
}

std::vector<SleepingHeading> sleeping_headings(const SourceText& source) {
  std::vector<SleepingHeading> out;
  const auto lines = static_cast<std::uint32_t>(std::ranges::count(source.text(), '\n') + 1);
  for (std::uint32_t n = 1; n <= lines; ++n) {
    std::string_view line = trimmed(source.line(n));
    if (!line.starts_with('#')) continue;
    line = trimmed(line.substr(1));
    const std::size_t end = line.find("]]");
    if (!line.starts_with("[[") || end == std::string_view::npos) continue;
    out.push_back({n, std::string(trimmed(line.substr(2, end - 2)))});
  }
  return out;
}

std::optional<Document> parse(const ReadContext& context, std::uint32_t file,
                              const LineStarts& starts) {
  const SourceText& source = context.sources.at(file);
  std::string text(source.text());
  Document document{file, {}, true, sleeping_headings(source)};
  if (auto plain = plain_document(source, file)) {
    document.root = *std::move(plain);
    return document;
  }
  std::uint32_t last = 0, lengthened = 0;
  std::vector<Stretch> stretches;
  LineStarts now = starts;
  // Takes lines out, with whatever bracket they left open.
  const auto leave_out = [&](std::uint32_t from, std::uint32_t end) {
    document.left_out.push_back(from);
    for (std::uint32_t n = from; n < end; ++n) blank_line(text, n);
    DiagnosticSink unheard;
    if (auto again = scan_text(SourceText("", text), file, unheard)) now = *std::move(again);
  };
  for (std::size_t faults = 0; faults < most_syntax_faults;) {
    try {
      const toml::table root = toml::parse(std::string_view(text));
      Converter converter(file, stretches, context.sink);
      document.root = converter.table(root, 1);
      if (converter.too_deep()) return std::nullopt;
      return document;
    } catch (const toml::parse_error& fault) {
      const SourceSpan at = to_span(fault.source(), file, stretches);
      if (at.begin.line > lengthened && lengthen_times(text, at.begin.line, stretches)) {
        lengthened = at.begin.line;
        continue;
      }
      if (at.begin.line <= last) return std::nullopt;  // the same fault again
      ++faults;
      document.whole = false;
      last = at.begin.line;
      const std::uint32_t opened = unclosed_list(source, at, fault.description());
      if (opened != 0 && now.clean(opened)) {
        report_unclosed_list(source, file, opened, opened + 1 == last, context.sink);
        leave_out(opened, last);
        --last;
        continue;
      }
      report_syntax_fault(source, at, fault.description(), context.sink);
      if (is_heading(source, last) && now.clean(last)) {
        // What stands under it belongs to nothing else: parsing goes on at the next heading.
        const std::uint32_t end = end_of_section(source, file, last);
        if (end == 0) return std::nullopt;
        leave_out(last, end);
        continue;
      }
      if (!stands_alone(source, now, last)) return std::nullopt;
      leave_out(last, last + 1);
    }
  }
  context.sink
      .error("too-many-faults", {file, {last, 1}, {last, 1}},
             fmt::format("{} faults of TOML itself: the rest of the file is not read",
                         most_syntax_faults))
      .hint = "mend these first; is this the right file?";
  return std::nullopt;
}

bool only_space_and_comments(std::string_view text) {
  bool comment = false;
  for (const char c : text) {
    if (c == '\n') comment = false;
    if (c == '#') comment = true;
    if (!comment && c != ' ' && c != '\t' && c != '\r' && c != '\n') return false;
  }
  return true;
}

std::uint32_t report_unreadable(const ReadContext& context, const std::string& path,
                                const std::string& fault) {
  const std::uint32_t file = context.sources.add(path, {}, context.passing);
  context.sink.error("unreadable", {file, {}, {}}, "cannot be read: " + fault);
  return file;
}

std::uint32_t report_link(const ReadContext& context, const std::string& path) {
  const std::uint32_t file = context.sources.add(path, {}, context.passing);
  context.sink
      .error("link", {file, {}, {}}, "is a link, and what it leads to is not TOML as it stands")
      .hint = "put the file itself here, or mend what the link leads to";
  return file;
}

ReadFile read_text(const ReadContext& context, std::string path, std::string text,
                   std::string_view must_have, std::size_t most = Files::largest) {
  if (text.starts_with("\xEF\xBB\xBF")) text.erase(0, 3);
  const std::uint32_t file = context.sources.add(std::move(path), std::move(text), context.passing);
  const SourceText& source = context.sources.at(file);
  const auto starts = scan_text(source, file, context.sink, most);
  if (!starts) return {file, std::nullopt};
  if (!must_have.empty() && only_space_and_comments(source.text())) {
    context.sink.error("empty", {file, {}, {}}, fmt::format("is empty; {}", must_have));
    return {file, std::nullopt};
  }
  return {file, parse(context, file, *starts)};
}
}  // namespace

bool leads_astray(const FileContent& content) {
  if (!content.bytes || !content.through_link) return false;
  try {
    const toml::table ignored = toml::parse(std::string_view(*content.bytes));
    return false;
  } catch (const toml::parse_error&) {
    return true;
  }
}

std::optional<std::string> read_bytes(const ReadContext& context, const std::string& path) {
  FileContent content = context.files.read(path);
  if (!content.bytes) report_unreadable(context, path, content.fault);
  if (!leads_astray(content)) return std::move(content.bytes);
  report_link(context, path);
  return std::nullopt;
}

std::vector<std::string> list_folder(const ReadContext& context, const std::string& folder,
                                     bool& read) {
  FolderContent content = context.files.list(folder);
  read = content.fault.empty();
  if (!read) report_unreadable(context, folder, content.fault);
  return std::move(content.names);
}

std::optional<Document> read_document(const ReadContext& context, std::string path,
                                      std::string text, std::string_view must_have) {
  return read_text(context, std::move(path), std::move(text), must_have).document;
}

ReadFile read_file(const ReadContext& context, const std::string& path, std::string_view must_have,
                   std::size_t most) {
  FileContent content = context.files.read_up_to(path, most);
  if (!content.bytes) return {report_unreadable(context, path, content.fault), std::nullopt};
  if (leads_astray(content)) return {report_link(context, path), std::nullopt};
  return read_text(context, path, *std::move(content.bytes), must_have, most);
}

std::string stem(std::string_view path) {
  const std::size_t slash = path.rfind('/');
  if (slash != std::string_view::npos) path.remove_prefix(slash + 1);
  if (path.ends_with(".toml")) path.remove_suffix(5);
  return std::string(path);
}
}  // namespace furnish
