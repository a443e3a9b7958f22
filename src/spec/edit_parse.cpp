#include "spec/edit_parse.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"
#include "spec/document.h"

namespace furnish {
namespace {
EditTable converted(const TomlTable& from);

struct Converted {
  EditValue operator()(const TomlDate& date) const { return {EditDate{date.written}}; }
  EditValue operator()(const TomlTime& time) const { return {EditTime{time.written}}; }
  EditValue operator()(const TomlDateTime& both) const { return {EditMoment{both.written}}; }
  EditValue operator()(const TomlList& list) const {
    EditList out;
    for (const TomlNode& item : list) out.push_back(std::visit(Converted{}, item.value));
    return {std::move(out)};
  }
  EditValue operator()(const TomlTable& table) const { return {converted(table)}; }
  template <typename Plain>
  EditValue operator()(const Plain& value) const {
    return {value};
  }
};

EditTable converted(const TomlTable& from) {
  EditTable out;
  for (const TomlEntry& one : from) {
    out.push_back({one.key, std::visit(Converted{}, one.node.value)});
  }
  return out;
}

/// What the reader makes of it; empty after a fault of the file as such.
std::optional<EditTable> read_tree(std::string_view text, std::string& fault) {
  const MemoryFiles none({});
  SourceSet sources;
  DiagnosticSink sink;
  const auto document = read_document({none, sources, sink}, {}, std::string(text), {});
  if (document && !sink.has_errors()) return converted(document->root);
  const Diagnostic& first = sink.all().front();
  const std::uint32_t line = first.span.begin.line;
  fault = line == 0 ? first.message : fmt::format("line {}: {}", line, first.message);
  return std::nullopt;
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
  auto tree = read_tree(body, fault);
  if (!tree) return nullptr;
  out->tree.is = *std::move(tree);
  out->starts = {out->begin};
  for (std::size_t i = out->begin; i + 1 < out->text.size(); ++i) {
    if (out->text[i] == '\n') out->starts.push_back(i + 1);
  }
  auto layout = lay_out(out->text, out->begin);
  if (!layout) {
    fault = "this file cannot be taken apart into its lines";
    return nullptr;
  }
  out->layout = *std::move(layout);
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
