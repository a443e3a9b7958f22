#include <algorithm>

#include "spec/edit.h"
#include "spec/edit_parse.h"

// From a path to its place in the text, and back.

namespace furnish {
namespace {
bool holds(std::size_t begin, std::size_t end, std::size_t byte) {
  return begin <= byte && byte < end;
}

void add_steps(const TextLayout::Value& value, std::size_t byte, EditPath& path);

void add_steps(const TextLayout::Pair& pair, std::size_t byte, EditPath& path) {
  for (const TextLayout::Key& key : pair.keys) {
    path.emplace_back(key.name);
    if (holds(key.at.begin, key.at.end, byte)) return;
  }
  add_steps(pair.value, byte, path);
}

void add_steps(const TextLayout::Value& value, std::size_t byte, EditPath& path) {
  for (std::size_t n = 0; n < value.items.size(); ++n) {
    if (!holds(value.items[n].at.begin, value.items[n].at.end, byte)) continue;
    path.emplace_back(n);
    return add_steps(value.items[n], byte, path);
  }
  for (const TextLayout::Pair& pair : value.pairs) {
    if (holds(pair.begin(), pair.end(), byte)) return add_steps(pair, byte, path);
  }
}
}  // namespace

EditPath EditedText::path_at(Position at) const {
  if (!good() || at.line == 0) return {};
  const std::size_t byte = parsed_->byte(at), line = parsed_->line_of(byte);
  const TextLayout::Block* under = &parsed_->layout.blocks.front();
  for (const TextLayout::Block& block : parsed_->layout.blocks) {
    if (parsed_->line_of(block.at.begin) <= line) under = &block;
  }
  EditPath out = under->path;
  for (const TextLayout::Pair& pair : under->pairs) {
    if (line < parsed_->first_line(pair) || line > parsed_->last_line(pair)) continue;
    add_steps(pair, byte, out);
    break;
  }
  return out;
}

std::optional<EditedText::Place> EditedText::where(const EditPath& path) const {
  if (!good() || path.empty()) return std::nullopt;
  const Site site = find_site(parsed_->layout, as_written(path));
  const auto place = [&](TextLayout::Span all, TextLayout::Span value) {
    return Place{parsed_->position(all.begin), parsed_->position(all.end),
                 parsed_->position(value.begin), parsed_->position(value.end)};
  };
  if (site.value != nullptr) {
    const std::size_t begin = site.pair != nullptr ? site.pair->begin() : site.value->at.begin;
    return place({begin, site.value->at.end}, site.value->at);
  }
  const auto dotted = [&](const TextLayout::Pair& pair) {
    return place({pair.begin(), pair.end()}, pair.value.at);
  };
  if (!site.parts.empty()) return dotted(site.around->pairs[site.parts.front()]);
  if (!site.statements.empty()) {
    const Site::Statement one = site.statements.front();
    return dotted(parsed_->layout.blocks[one.block].pairs[one.pair]);
  }
  if (site.blocks.empty()) return std::nullopt;
  const TextLayout::Span header = parsed_->layout.blocks[site.blocks.front()].at;
  return place(header, header);
}
}  // namespace furnish
