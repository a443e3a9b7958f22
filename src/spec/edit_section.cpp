#include "spec/edit_section.h"

#include <algorithm>

#include "base/text.h"
#include "spec/edit_keys.h"
#include "spec/toml_text.h"

namespace furnish {
namespace {
/// A header and its keys, equals signs in one column; ends in a line end.
std::string section(const std::string& header, const EditTable& table,
                    std::string_view header_indent = {}, std::string_view indent = {}) {
  std::size_t widest = 0;
  for (const EditEntry& one : table) {
    widest = std::max(widest, code_points(toml_text::key(one.key)));
  }
  std::string out = std::string(header_indent) + header + "\n";
  for (const auto& [key, value] : table) {
    const std::string name = toml_text::key(key);
    out += std::string(indent) + name + std::string(widest - code_points(name), ' ') + " = " +
           toml_text::value(value) + "\n";
  }
  return out;
}

/// The last line that belongs to a block: remarks right under its keys do, unless they stand right
/// above the next header.
std::size_t end_of_block(const ParsedText& parsed, std::size_t b) {
  const std::size_t last = parsed.last_line(parsed.layout.blocks[b]);
  std::size_t n = last;
  const auto remark = [&](std::size_t line) {
    return !parsed.blank(line) &&
           parsed.line(line).substr(parsed.indent(line).size()).starts_with('#');
  };
  while (remark(n + 1)) ++n;
  return parsed.blank(n + 1) ? n : last;
}

/// Whether headers stand right under what is above them.
bool compact(const ParsedText& parsed) {
  std::size_t close = 0, apart = 0;
  for (std::size_t b = 1; b < parsed.layout.blocks.size(); ++b) {
    const std::size_t lead = parsed.lead(parsed.line_of(parsed.layout.blocks[b].at.begin));
    if (lead > 0) ++(parsed.blank(lead - 1) ? apart : close);
  }
  return close > 0 && apart == 0;
}

/// `body` behind a line, an empty line on each side.
Splice section_after(const ParsedText& parsed, std::size_t line, const std::string& body) {
  const std::string newline = parsed.newline(line);
  const bool tight = compact(parsed);
  const std::size_t at = parsed.line_end(line);
  std::string text = with_newline(body, newline);
  const bool more = line + 1 < parsed.starts.size() && !parsed.blank(line + 1);
  if (!tight) text = newline + text + (more ? newline : "");
  if (at == 0 || parsed.text[at - 1] != '\n') {
    text = newline + text.substr(0, text.size() - newline.size());
  }
  return {at, 0, text};
}

std::size_t depth_of(const EditPath& path) {
  return static_cast<std::size_t>(std::ranges::count_if(
      path, [](const EditStep& step) { return std::holds_alternative<std::string>(step); }));
}

/// Above a header and the remark at it; what stands at the top of the file stays there.
std::size_t above(const ParsedText& parsed, std::size_t header) {
  const std::size_t lead = parsed.lead(header);
  return parsed.starts[lead == 0 ? header : lead];
}
}  // namespace

SectionPlace::SectionPlace(const ParsedText& parsed, const TableInfo* file, EditPath table)
    : parsed_(parsed), table_(std::move(table)), info_(table_at(file, table_)) {}

std::vector<SectionPlace::Group> SectionPlace::groups() const {
  std::vector<Group> out;
  const auto& blocks = parsed_.layout.blocks;
  for (std::size_t b = 1; b < blocks.size(); ++b) {
    if (blocks[b].path.size() <= table_.size() || !begins_with(blocks[b].path, table_)) continue;
    const auto* const name = std::get_if<std::string>(&blocks[b].path[table_.size()]);
    if (name == nullptr) continue;
    const std::size_t header = parsed_.line_of(blocks[b].at.begin), last = end_of_block(parsed_, b);
    const auto known = std::ranges::find(out, *name, &Group::name);
    if (known == out.end()) {
      out.push_back({*name, header, last});
    } else {
      known->last = last;
    }
  }
  return out;
}

bool SectionPlace::has_children() const {
  return !groups().empty();
}

std::string SectionPlace::header(const std::string& key) const {
  const std::string name = toml_text::key(key);
  if (table_.empty()) return "[" + name + "]";
  const std::size_t depth = depth_of(table_);
  for (const TextLayout::Block& block : parsed_.layout.blocks) {
    if (!begins_with(block.path, table_) || block.keys.size() <= depth) continue;
    const std::size_t begin = block.keys.front().at.begin;
    return "[" + parsed_.text.substr(begin, block.keys[depth].at.begin - begin) + name + "]";
  }
  return "[" + name + "]";
}

Splice SectionPlace::placed(const std::string& key, const std::string& body) const {
  const std::vector<Group> all = groups();
  const std::size_t mine = rank(info_, key);
  const Group* before = nullptr;
  for (const Group& one : all) {
    const std::size_t other = rank(info_, one.name);
    if (other > mine) continue;
    if (before != nullptr && other < rank(info_, before->name)) continue;
    before = &one;
  }
  const bool last = info_ == nullptr || mine == info_->keys.size();
  if (before != nullptr && !last) return section_after(parsed_, before->last, body);
  if (!all.empty() && !last) {
    const std::size_t at = above(parsed_, all.front().first);
    const std::string newline = parsed_.newline(all.front().first);
    return {at, 0, with_newline(body, newline) + (compact(parsed_) ? "" : newline)};
  }
  if (!all.empty() && !table_.empty()) return section_after(parsed_, all.back().last, body);
  std::size_t line = parsed_.starts.size() - 1;
  while (line > 0 && parsed_.blank(line)) --line;
  if (parsed_.blank(line)) return {parsed_.begin, 0, with_newline(body, parsed_.newline(0))};
  return section_after(parsed_, line, body);
}

Splice SectionPlace::child(const std::string& key, const EditTable& table) const {
  return placed(key, section(header(key), table));
}

Splice SectionPlace::elements(const std::string& key, const EditList& list) const {
  std::string body;
  for (const EditValue& one : list) {
    body += (body.empty() ? "" : "\n") + section("[" + header(key) + "]", *one.table());
  }
  return placed(key, body);
}

std::optional<Splice> SectionPlace::opened(
    const std::vector<std::pair<std::string, std::string>>& rows) const {
  const std::size_t depth = depth_of(table_);
  for (const TextLayout::Block& block : parsed_.layout.blocks) {
    if (!begins_with(block.path, table_) || block.keys.size() < depth || depth == 0) continue;
    const std::size_t begin = block.keys.front().at.begin, end = block.keys[depth - 1].at.end;
    const std::size_t line = parsed_.line_of(block.at.begin);
    std::string body = "[" + parsed_.text.substr(begin, end - begin) + "]\n";
    for (const auto& [key, value] : rows) body += toml_text::key(key) + " = " + value + "\n";
    const std::string newline = parsed_.newline(line);
    return Splice{above(parsed_, line), 0,
                  with_newline(body, newline) + (compact(parsed_) ? "" : newline)};
  }
  return std::nullopt;
}

std::optional<Splice> insert_section(const ParsedText& parsed, const EditPath& list,
                                     std::size_t before, const EditTable& table) {
  const auto& blocks = parsed.layout.blocks;
  const std::size_t near = before == 0 ? 0 : before - 1;
  const EditPath beside = joined(list, near);
  std::optional<std::size_t> first, last;
  for (std::size_t b = 1; b < blocks.size(); ++b) {
    if (!begins_with(blocks[b].path, beside)) continue;
    if (!first) first = b;
    last = b;
  }
  if (!first) return std::nullopt;
  const TextLayout::Block& block = blocks[*first];
  const std::size_t line = parsed.line_of(block.at.begin);
  const std::string_view header_indent = parsed.indent(line);
  const std::string_view indent =
      block.pairs.empty() ? header_indent : parsed.indent(parsed.first_line(block.pairs.front()));
  const std::string body = section(std::string(parsed.of(block.at)), table, header_indent, indent);
  if (before > 0) return section_after(parsed, end_of_block(parsed, *last), body);
  const std::string newline = parsed.newline(line);
  return Splice{above(parsed, line), 0,
                with_newline(body, newline) + (compact(parsed) ? "" : newline)};
}
}  // namespace furnish
