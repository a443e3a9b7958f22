#include "spec/fields.h"

#include <fmt/format.h>

#include <algorithm>

#include "base/text.h"

namespace furnish {

Fields::Fields(const Document& document, std::string name, DiagnosticSink& sink)
    : table_(&document.root),
      span_(document.span()),
      name_(std::move(name)),
      complete_(document.whole),
      sink_(&sink) {}

Fields::Fields(const TomlNode& node, std::string name, const Fields& parent)
    : table_(&std::get<TomlTable>(node.value)),
      span_(node.span),
      name_(std::move(name)),
      complete_(parent.complete_),
      sink_(parent.sink_) {}

const TomlEntry* Fields::find(std::string_view key) {
  if (std::ranges::find(known_, key) == known_.end()) known_.push_back(key);
  const auto found = std::ranges::find(*table_, key, &TomlEntry::key);
  return found == table_->end() ? nullptr : &*found;
}

std::vector<const TomlEntry*> Fields::rest() {
  std::vector<const TomlEntry*> out;
  for (const TomlEntry& entry : *table_) {
    if (std::ranges::find(known_, entry.key) == known_.end()) out.push_back(&entry);
  }
  for (const TomlEntry* const entry : out) known_.push_back(entry->key);
  return out;
}

void Fields::require(std::string_view key, std::string_view example) {
  // In a file with lines left out, what is missing may stand in one of them.
  if (find(key) != nullptr || !complete_) return;
  const std::string shown =
      example.starts_with('[') ? fmt::format("[{}]", key) : fmt::format("'{}'", key);
  sink_->error("missing-key", span_, fmt::format("{} is missing in {}", shown, name_)).hint =
      fmt::format("write {}", example);
}

void Fields::finish() {
  for (const TomlEntry& entry : *table_) {
    if (std::ranges::find(known_, entry.key) != known_.end()) continue;
    Diagnostic& fault =
        report_unknown("unknown-key", entry.key_span, "key", entry.key, known_, *sink_);
    fault.message += fmt::format(" in {}", name_);
  }
}

std::optional<Located<std::string>> Fields::text(std::string_view key) {
  const TomlEntry* const entry = find(key);
  if (entry == nullptr) return std::nullopt;
  auto value = as_text(entry->node, key, *sink_);
  if (!value) return std::nullopt;
  return Located<std::string>{*std::move(value), entry->node.span};
}

std::string Fields::words(std::string_view key) {
  auto found = text(key);
  return found ? std::move(found->value) : std::string();
}

const TomlNode* Fields::peek(std::string_view key) const {
  const auto found = std::ranges::find(*table_, key, &TomlEntry::key);
  return found == table_->end() ? nullptr : &found->node;
}

bool Fields::flag(std::string_view key, bool otherwise) {
  const TomlEntry* const entry = find(key);
  if (entry == nullptr) return otherwise;
  return as_flag(entry->node, key, *sink_).value_or(otherwise);
}

std::optional<Located<Date>> Fields::date(std::string_view key) {
  const TomlEntry* const entry = find(key);
  if (entry == nullptr) return std::nullopt;
  const auto value = as_date(entry->node, key, *sink_);
  if (!value) return std::nullopt;
  return Located<Date>{*value, entry->node.span};
}

std::optional<TimeOfDay> Fields::time(std::string_view key) {
  const TomlEntry* const entry = find(key);
  return entry == nullptr ? std::nullopt : as_time(entry->node, key, *sink_);
}

std::optional<double> Fields::number(std::string_view key, const Range<double>& range) {
  const TomlEntry* const entry = find(key);
  return entry == nullptr ? std::nullopt : as_number(entry->node, key, range, *sink_);
}

std::optional<int> Fields::whole(std::string_view key, const Range<double>& range) {
  const TomlEntry* const entry = find(key);
  return entry == nullptr ? std::nullopt : as_whole(entry->node, key, range, *sink_);
}

std::span<const TomlNode> Fields::items(std::string_view key) {
  const TomlEntry* const entry = find(key);
  if (entry == nullptr) return {};
  const TomlList* const list = as_list(entry->node, key, *sink_);
  return list == nullptr ? std::span<const TomlNode>() : std::span<const TomlNode>(*list);
}

std::vector<Located<std::string>> Fields::texts(std::string_view key) {
  std::vector<Located<std::string>> out;
  for (const TomlNode& item : items(key)) {
    if (auto value = as_text(item, key, *sink_)) out.push_back({*std::move(value), item.span});
  }
  return out;
}

std::vector<std::string> Fields::word_list(std::string_view key) {
  std::vector<std::string> out;
  for (Located<std::string>& text : texts(key)) out.push_back(std::move(text.value));
  return out;
}

std::optional<Fields> Fields::table(std::string_view key) {
  const TomlEntry* const entry = find(key);
  if (entry == nullptr) return std::nullopt;
  if (!std::holds_alternative<TomlTable>(entry->node.value)) {
    Diagnostic& fault = report_type(entry->node, key, fmt::format("a table [{}]", key), *sink_);
    if (std::holds_alternative<TomlList>(entry->node.value)) {
      fault.hint = fmt::format("write [{}] once, in single brackets", key);
    }
    return std::nullopt;
  }
  return Fields(entry->node, fmt::format("[{}]", key), *this);
}

std::vector<Fields> Fields::tables(std::string_view key) {
  std::vector<Fields> out;
  const TomlEntry* const entry = find(key);
  if (entry == nullptr) return out;
  if (std::holds_alternative<TomlTable>(entry->node.value)) {
    sink_->error("wrong-type", entry->node.span, fmt::format("[{}] is one of a list", key)).hint =
        fmt::format("write [[{}]], in double brackets", key);
    return out;
  }
  const TomlList* const list = as_list(entry->node, key, *sink_);
  if (list == nullptr) return out;
  for (const TomlNode& item : *list) {
    if (std::holds_alternative<TomlTable>(item.value)) {
      out.emplace_back(item, fmt::format("[[{}]]", key), *this);
    } else {
      report_type(item, key, fmt::format("a table [[{}]]", key), *sink_);
    }
  }
  return out;
}

void Fields::report_twice(std::string_view noun, SourceSpan again, SourceSpan first) const {
  sink_->error("given-twice", again, fmt::format("this {} is given twice", noun))
      .notes.emplace_back(first, "first given here");
}
}  // namespace furnish
