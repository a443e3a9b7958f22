#include "spec/edit_parse.h"

#include <fmt/format.h>

#include <toml++/toml.h>
#include <algorithm>
#include <sstream>

#include "base/diagnostic.h"
#include "base/text.h"
#include "spec/scan.h"

namespace furnish {
namespace {
template <typename T>
std::string as_text(const T& value) {
  std::ostringstream out;
  out << value;
  return out.str();
}

EditValue converted(const toml::node& from);

EditTable converted(const toml::table& from) {
  std::vector<std::pair<toml::source_position, EditEntry>> entries;
  for (const auto& [key, node] : from) {
    entries.emplace_back(key.source().begin, EditEntry{std::string(key.str()), converted(node)});
  }
  // toml++ sorts by the alphabet.
  std::ranges::stable_sort(entries, [](const auto& a, const auto& b) { return a.first < b.first; });
  EditTable out;
  for (auto& [at, entry] : entries) out.push_back(std::move(entry));
  return out;
}

EditValue converted(const toml::node& from) {
  if (const auto* const table = from.as_table()) return {converted(*table)};
  if (const auto* const list = from.as_array()) {
    EditList items;
    for (const toml::node& item : *list) items.push_back(converted(item));
    return {std::move(items)};
  }
  if (const auto* const text = from.as_string()) return {text->get()};
  if (const auto* const whole = from.as_integer()) return {whole->get()};
  if (const auto* const real = from.as_floating_point()) return {real->get()};
  if (const auto* const truth = from.as_boolean()) return {truth->get()};
  if (const auto* const date = from.as_date()) return {EditDate{as_text(date->get())}};
  if (const auto* const time = from.as_time()) return {EditTime{as_text(time->get())}};
  return {EditMoment{as_text(from.as_date_time()->get())}};
}

/// As TOML 1.0 has it: times with their seconds.
std::string strict(const ParsedText& parsed) {
  std::string out = parsed.text.substr(parsed.begin);
  const auto& times = parsed.layout.short_times;
  for (auto one = times.rbegin(); one != times.rend(); ++one) {
    const std::size_t bytes = one->end - one->begin;
    out.insert(one->end - parsed.begin, ":00");
    if (bytes == 4) out.insert(one->begin - parsed.begin, "0");
  }
  return out;
}

/// Bounds of size and depth, encoding, control characters; the first fault, or nothing.
std::string scanned(std::string_view text) {
  SourceSet sources;
  DiagnosticSink sink;
  const std::uint32_t file = sources.add({}, std::string(text));
  if (scan_text(sources.at(file), file, sink)) return {};
  const Diagnostic& fault = sink.all().front();
  return fault.span.begin.line == 0
             ? fault.message
             : fmt::format("line {}: {}", fault.span.begin.line, fault.message);
}
}  // namespace

std::size_t ParsedText::line_of(std::size_t byte) const {
  return static_cast<std::size_t>(std::ranges::upper_bound(starts, byte) - starts.begin()) - 1;
}
std::size_t ParsedText::line_end(std::size_t line) const {
  return line + 1 < starts.size() ? starts[line + 1] : text.size();
}
std::string_view ParsedText::line(std::size_t n) const {
  std::string_view out = std::string_view(text).substr(starts[n], line_end(n) - starts[n]);
  while (out.ends_with('\n') || out.ends_with('\r')) out.remove_suffix(1);
  return out;
}
bool ParsedText::blank(std::size_t n) const {
  return n >= starts.size() || line(n).find_first_not_of(" \t") == std::string_view::npos;
}
std::string_view ParsedText::indent(std::size_t n) const {
  const std::string_view all = line(n);
  return all.substr(0, std::min(all.find_first_not_of(" \t"), all.size()));
}
std::string ParsedText::newline(std::size_t near) const {
  for (const std::size_t n : {near, std::size_t{0}}) {
    const std::string_view so_far = std::string_view(text).substr(0, line_end(n));
    if (so_far.ends_with("\r\n")) return "\r\n";
    if (so_far.ends_with('\n')) return "\n";
  }
  return "\n";
}
std::size_t ParsedText::lead(std::size_t n) const {
  while (n > 0 && line(n - 1).substr(indent(n - 1).size()).starts_with('#')) --n;
  return n;
}
Position ParsedText::position(std::size_t byte) const {
  const std::size_t n = line_of(byte);
  const std::string_view before = std::string_view(text).substr(starts[n], byte - starts[n]);
  return {static_cast<std::uint32_t>(n + 1), static_cast<std::uint32_t>(code_points(before) + 1)};
}
std::size_t ParsedText::byte(Position at) const {
  if (at.line == 0) return begin;
  if (at.line > starts.size()) return text.size();
  const std::size_t column = at.column == 0 ? 0 : at.column - 1;
  return starts[at.line - 1] + byte_of_code_point(line(at.line - 1), column);
}
std::size_t ParsedText::last_line(const TextLayout::Block& block) const {
  return block.pairs.empty() ? line_of(block.at.begin) : last_line(block.pairs.back());
}

std::shared_ptr<const ParsedText> parse_for_edits(std::string text, std::string& fault) {
  auto out = std::make_shared<ParsedText>();
  out->begin = text.starts_with("\xEF\xBB\xBF") ? 3 : 0;
  out->text = std::move(text);
  const std::string_view body = std::string_view(out->text).substr(out->begin);
  fault = scanned(body);
  if (!fault.empty()) return nullptr;
  out->starts = {out->begin};
  for (std::size_t i = out->begin; i + 1 < out->text.size(); ++i) {
    if (out->text[i] == '\n') out->starts.push_back(i + 1);
  }
  auto layout = lay_out(out->text, out->begin);
  if (layout) out->layout = *std::move(layout);
  try {
    out->tree.is = converted(toml::parse(std::string_view(strict(*out))));
  } catch (const toml::parse_error& error) {
    fault = fmt::format("line {}: {}", error.source().begin.line, error.description());
    return nullptr;
  }
  if (out->layout.blocks.empty()) {
    fault = "this file cannot be taken apart into its lines";
    return nullptr;
  }
  return out;
}

namespace {
/// What `rest` finds in braces or a list.
void find_within(const TextLayout::Value& value, std::span<const EditStep> rest, Site& out);

/// Whether `rest` is at, above or below a key; looks below.
bool find_in_pair(const TextLayout::Pair& pair, std::span<const EditStep> rest, Site& out) {
  const std::size_t shared = std::min(rest.size(), pair.keys.size());
  for (std::size_t n = 0; n < shared; ++n) {
    const auto* const name = std::get_if<std::string>(&rest[n]);
    if (name == nullptr || *name != pair.keys[n].name) return false;
  }
  if (rest.size() > shared) {
    find_within(pair.value, rest.subspan(shared), out);
    return false;
  }
  if (pair.keys.size() == shared) {
    out.value = &pair.value;
    out.pair = &pair;
  }
  return true;
}

void find_within(const TextLayout::Value& value, std::span<const EditStep> rest, Site& out) {
  std::vector<std::size_t> parts;
  for (std::size_t n = 0; n < value.pairs.size(); ++n) {
    if (find_in_pair(value.pairs[n], rest, out)) parts.push_back(n);
  }
  const auto* const place = std::get_if<std::size_t>(&rest.front());
  if (place != nullptr && *place < value.items.size()) {
    if (rest.size() > 1) return find_within(value.items[*place], rest.subspan(1), out);
    out.value = &value.items[*place];
    parts.push_back(*place);
  }
  if (parts.empty()) return;
  out.around = &value;
  out.below = rest.size();
  out.parts = std::move(parts);
}
}  // namespace

Site find_site(const TextLayout& layout, const EditPath& path) {
  Site out;
  for (std::size_t b = 0; b < layout.blocks.size(); ++b) {
    const TextLayout::Block& block = layout.blocks[b];
    if (begins_with(block.path, path) && b > 0) out.blocks.push_back(b);
    if (path.size() <= block.path.size() || !begins_with(path, block.path)) continue;
    const std::span<const EditStep> rest = std::span(path).subspan(block.path.size());
    for (std::size_t p = 0; p < block.pairs.size(); ++p) {
      if (find_in_pair(block.pairs[p], rest, out)) out.statements.push_back({b, p});
    }
  }
  return out;
}
}  // namespace furnish
