#include "spec/fields.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cassert>
#include <utility>

#include "base/text.h"
#include "spec/file_kinds.h"
#include "spec/offer.h"
#include "spec/toml_text.h"

namespace furnish {
namespace {
/// A line to copy: `write text = "…"`, and what it is for or which words may stand there.
std::string what_to_write(const KeyInfo& key, std::string_view remark) {
  if (key.kind == Kind::table) {
    return fmt::format("write [{}] and under it {}", key.name, key.example);
  }
  const bool words = key.kind == Kind::text || key.kind == Kind::free_text;
  std::string out = fmt::format("write {} = {}", key.name, words ? "\"…\"" : key.example);
  if (!remark.empty()) return out + fmt::format("  # {}", remark);
  if (key.words != nullptr && key.words().size() <= 5) {
    return out + fmt::format("  # one of {}", fmt::join(key.words(), ", "));
  }
  return out + fmt::format("  # {}", key.doc);
}
/// What people call keys that no edit of a few letters leads to; common practice, no source.
struct OtherName {
  std::string_view said, key;
};
constexpr std::array other_names{
    OtherName{"time", "at"},
    OtherName{"tel", "phone"},
    OtherName{"telephone", "phone"},
    OtherName{"mobile", "phone"},
    OtherName{"cell", "phone"},
    OtherName{"number", "phone"},
    OtherName{"mail", "email"},
    OtherName{"dob", "born"},
    OtherName{"birthday", "born"},
    OtherName{"birthdate", "born"},
    OtherName{"age", "born"},
    OtherName{"gender", "sex"},
    OtherName{"markings", "colour"},
    OtherName{"every", "visit_every"},
    OtherName{"interval", "visit_every"},
    OtherName{"frequency", "visit_every"},
    OtherName{"breaks", "rest_every"},
    OtherName{"rest", "rest_every"},
    OtherName{"medical", "conditions"},
    OtherName{"illness", "conditions"},
    OtherName{"brings", "comes_with"},
    OtherName{"pickup", "collects"},
    OtherName{"wants", "likes"},
};

std::string heading(const KeyInfo& section) {
  return section.kind == Kind::tables ? fmt::format("[[{}]]", section.name)
                                      : fmt::format("[{}]", section.name);
}
}  // namespace

std::string where_it_belongs(std::string_view key, const TableInfo& file, const TableInfo* here) {
  const auto* const meant = std::ranges::find(other_names, key, &OtherName::said);
  if (meant != other_names.end()) {
    if (here != nullptr &&
        std::ranges::find(here->keys, meant->key, &KeyInfo::name) != here->keys.end())
      return fmt::format("its key is {}", meant->key);
    const std::string where = where_it_belongs(meant->key, file, here);
    return where.empty() ? where : fmt::format("its key is {}: {}", meant->key, where);
  }
  const auto section_in = [&](const TableInfo& one) -> const KeyInfo* {
    for (const KeyInfo* const section : one.keys) {
      if (section->table == nullptr || section->table == here) continue;
      if (section->kind != Kind::table && section->kind != Kind::tables) continue;
      const auto& keys = section->table->keys;
      if (std::ranges::find(keys, key, &KeyInfo::name) != keys.end()) return section;
    }
    return nullptr;
  };
  if (const KeyInfo* const section = section_in(file)) {
    return fmt::format("write it under {}", heading(*section));
  }
  for (const FileKind& kind : file_kinds()) {
    const KeyInfo* const section = section_in(*kind.table);
    if (section == nullptr) continue;
    return fmt::format("it stands in {}, under {}", kind.title, heading(*section));
  }
  return {};
}

Fields::Fields(const Document& document, const TableInfo& info, DiagnosticSink& sink)
    : table_(&document.root),
      info_(&info),
      file_(&info),
      sleeping_(document.sleeping),
      span_(document.span()),
      name_(info.name),
      complete_(document.whole),
      sink_(&sink) {
  require_all();
}

Fields::Fields(const TomlNode& node, std::string name, const TableInfo& info, const Fields& parent)
    : table_(&std::get<TomlTable>(node.value)),
      info_(&info),
      file_(parent.file_),
      sleeping_(parent.sleeping_),
      span_(node.span),
      name_(std::move(name)),
      complete_(parent.complete_),
      sink_(parent.sink_) {
  require_all();
}

void Fields::require_all() {
  for (const KeyInfo* const key : info_->keys) {
    if (key->required) require(*key);
  }
}

const TomlEntry* Fields::find(const KeyInfo& key_info) {
  const std::string_view key = key_info.name;
  // Else schemas and templates would not know it.
  assert(std::ranges::find(info_->keys, key, &KeyInfo::name) != info_->keys.end());
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

void Fields::require(const KeyInfo& key, std::string_view remark) {
  // In a file with lines left out, what is missing may stand in one of them.
  if (peek(key) != nullptr || !complete_) return;
  const std::string shown =
      key.kind == Kind::table ? fmt::format("[{}]", key.name) : fmt::format("'{}'", key.name);
  sink_->error("missing-key", span_, fmt::format("{} is missing in {}", shown, name_)).hint =
      what_to_write(key, remark);
}

const SleepingHeading* Fields::asleep_above(const TomlEntry& entry) const {
  const SleepingHeading* out = nullptr;
  for (const SleepingHeading& one : sleeping_) {
    if (one.line > span_.begin.line && one.line < entry.key_span.begin.line) out = &one;
  }
  if (out == nullptr) return nullptr;
  const auto section = std::ranges::find(file_->keys, out->name, &KeyInfo::name);
  if (section == file_->keys.end() || (*section)->kind != Kind::tables) return nullptr;
  const auto& keys = (*section)->table->keys;
  return std::ranges::find(keys, entry.key, &KeyInfo::name) == keys.end() ? nullptr : out;
}

void Fields::finish() {
  const SleepingHeading* told = nullptr;
  std::vector<std::string_view> names;
  for (const KeyInfo* const key : info_->keys) names.push_back(key->name);
  for (const TomlEntry& entry : *table_) {
    if (std::ranges::find(known_, entry.key) != known_.end()) continue;
    if (const SleepingHeading* const above = asleep_above(entry)) {
      if (std::exchange(told, above) == above) continue;  // one # is to be taken off
      sink_
          ->error("unknown-key", entry.key_span,
                  fmt::format("'{}' belongs under [[{}]], which is a comment in line {}", entry.key,
                              above->name, above->line))
          .hint = fmt::format("take the # off [[{}]] above it", above->name);
      continue;
    }
    Diagnostic& fault =
        report_unknown("unknown-key", entry.key_span, "key", entry.key, names, *sink_);
    fault.message += fmt::format(" in {}", name_);
    if (fault.hint.starts_with("did you")) continue;
    if (std::string elsewhere = where_it_belongs(entry.key, *file_, info_); !elsewhere.empty()) {
      only_tell(fault, std::move(elsewhere));
    }
  }
}

std::optional<Located<std::string>> Fields::text(const TextKey& key) {
  const TomlEntry* const entry = find(key);
  if (entry == nullptr) return std::nullopt;
  auto value = as_text(entry->node, key.name, *sink_);
  if (!value) return std::nullopt;
  return Located<std::string>{*std::move(value), entry->node.span};
}

std::string Fields::words(const TextKey& key) {
  auto found = text(key);
  return found ? std::move(found->value) : std::string();
}

const TomlNode* Fields::peek(const KeyInfo& key) const {
  const auto found = std::ranges::find(*table_, key.name, &TomlEntry::key);
  return found == table_->end() ? nullptr : &found->node;
}

bool Fields::flag(const FlagKey& key, bool otherwise) {
  const TomlEntry* const entry = find(key);
  if (entry == nullptr) return otherwise;
  return as_flag(entry->node, key.name, *sink_).value_or(otherwise);
}

std::optional<Located<Date>> Fields::date(const DateKey& key) {
  const TomlEntry* const entry = find(key);
  if (entry == nullptr) return std::nullopt;
  const auto value = as_date(entry->node, key.name, *sink_);
  if (!value) return std::nullopt;
  return Located<Date>{*value, entry->node.span};
}

std::optional<TimeOfDay> Fields::time(const TimeKey& key) {
  const TomlEntry* const entry = find(key);
  return entry == nullptr ? std::nullopt : as_time(entry->node, key.name, *sink_);
}

std::optional<double> Fields::number(const NumberKey& key) {
  const TomlEntry* const entry = find(key);
  return entry == nullptr ? std::nullopt : as_number(entry->node, key.name, *key.numbers, *sink_);
}

std::optional<int> Fields::whole(const NumberKey& key) {
  const TomlEntry* const entry = find(key);
  return entry == nullptr ? std::nullopt : as_whole(entry->node, key.name, *key.numbers, *sink_);
}

std::span<const TomlNode> Fields::items(const KeyInfo& key) {
  const TomlEntry* const entry = find(key);
  if (entry == nullptr) return {};
  if (!std::holds_alternative<TomlList>(entry->node.value)) return alone(key, entry->node);
  const TomlList* const list = as_list(entry->node, key.name, *sink_);
  return list == nullptr ? std::span<const TomlNode>() : std::span<const TomlNode>(*list);
}

std::span<const TomlNode> Fields::alone(const KeyInfo& key, const TomlNode& node) {
  const auto* const text = std::get_if<std::string>(&node.value);
  const bool own_words = key.kind == Kind::texts || key.kind == Kind::free_texts;
  if (text == nullptr || own_words || text->find(',') == std::string::npos) return {&node, 1};
  // None of the words that may stand there has a comma.
  TomlList& list = made_.emplace_back();
  for (std::size_t begin = 0; begin <= text->size();) {
    const std::size_t end = std::min(text->find(',', begin), text->size());
    list.push_back({text->substr(begin, end - begin), node.span});
    begin = end + 1;
  }
  return list;
}

std::vector<Located<std::string>> Fields::texts(const TextsKey& key) {
  std::vector<Located<std::string>> out;
  for (const TomlNode& item : items(key)) {
    if (auto value = as_text(item, key.name, *sink_)) out.push_back({*std::move(value), item.span});
  }
  return out;
}

std::vector<std::string> Fields::word_list(const TextsKey& key) {
  std::vector<std::string> out;
  for (Located<std::string>& text : texts(key)) out.push_back(std::move(text.value));
  return out;
}

std::optional<Fields> Fields::table(const TableKey& key) {
  const TomlEntry* const entry = find(key);
  if (entry == nullptr) return std::nullopt;
  if (!std::holds_alternative<TomlTable>(entry->node.value)) {
    Diagnostic& fault =
        report_type(entry->node, key.name, fmt::format("a table [{}]", key.name), *sink_);
    if (std::holds_alternative<TomlList>(entry->node.value)) {
      fault.hint = fmt::format("write [{}] once, in single brackets", key.name);
    } else if (const auto* const text = std::get_if<std::string>(&entry->node.value)) {
      const auto& inner = key.table->keys;
      if (std::ranges::find(inner, "name", &KeyInfo::name) != inner.end()) {
        fault.hint = fmt::format("write {{ name = {} }}", toml_text::quoted(*text));
      }
    }
    return std::nullopt;
  }
  return Fields(entry->node, fmt::format("[{}]", key.name), *key.table, *this);
}

std::vector<Fields> Fields::tables(const TablesKey& key) {
  std::vector<Fields> out;
  const TomlEntry* const entry = find(key);
  if (entry == nullptr) return out;
  if (std::holds_alternative<TomlTable>(entry->node.value)) {
    sink_->error("wrong-type", entry->node.span, fmt::format("[{}] is one of a list", key.name))
        .hint = fmt::format("write [[{}]], in double brackets", key.name);
    return out;
  }
  const auto& inner = key.table->keys;
  const auto* const word = std::get_if<std::string>(&entry->node.value);
  if (word != nullptr && std::ranges::find(inner, key.name, &KeyInfo::name) != inner.end()) {
    report_type(entry->node, key.name, fmt::format("a table [[{}]]", key.name), *sink_).hint =
        fmt::format("it stands in a section of its own: [[{}]], and under it {} = {}", key.name,
                    key.name, toml_text::quoted(*word));
    return out;
  }
  const TomlList* const list = as_list(entry->node, key.name, *sink_);
  if (list == nullptr) return out;
  for (const TomlNode& item : *list) {
    if (std::holds_alternative<TomlTable>(item.value)) {
      out.emplace_back(item, fmt::format("[[{}]]", key.name), *key.table, *this);
    } else {
      report_type(item, key.name, fmt::format("a table [[{}]]", key.name), *sink_);
    }
  }
  return out;
}

void Fields::report_twice(std::string_view noun, SourceSpan again, SourceSpan first) const {
  sink_->error("given-twice", again, fmt::format("this {} is given twice", noun))
      .notes.emplace_back(first, "first given here");
}
}  // namespace furnish
